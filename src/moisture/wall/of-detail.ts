/** A detail's wall through the year of its project's place: what rules, drawings and maps start from. */
import { yearOfAir, type MonthOfAir } from '../interior-climate.js';
import { indoorOfProject, type ProjectIndoor } from './indoor.js';
import { judgeWall, type WallJudgement } from './judge.js';
import { wallOf, type ReadWall } from './wall.js';
import { monthlyClimate, type KnownMonths } from '../../climate/place.js';
import { editionOfProject, placeOfProject } from '../../climate/project-place.js';
import { remembered } from '../../model/remembered.js';
import type { Detail, Project } from '../../model/types.js';
import type { Locus } from '../../reading/types.js';

export interface WallYear {
  readonly kind: 'followed';
  readonly read: ReadWall;
  readonly climate: KnownMonths;
  readonly indoor: ProjectIndoor;
  /** Air on both sides, January to December. */
  readonly air: readonly MonthOfAir[];
  readonly judgement: WallJudgement;
  /** What was taken for what: wall, outdoor air, indoor air; print with the result. */
  readonly assumptions: readonly string[];
}
export interface WallNotFollowed {
  readonly kind: 'not followed';
  readonly missing: readonly string[];
  /** A clause without capital and full stop. */
  readonly reason: string;
  readonly at: Locus;
}

/** Air on both sides of a wall at a place. */
export function airAt(climate: Pick<KnownMonths, 'months'>, indoor: ProjectIndoor): MonthOfAir[] {
  const outside = climate.months.map((m) => ({
    temperatureC: m.meanTemperatureC,
    vaporPressurePa: m.vaporPressurePa,
  }));
  return yearOfAir(outside, indoor.climate);
}

/** One air for all details of a project, so that walls that are alike are followed once. */
const airOfProject = remembered((project: Project) => {
  const climate = monthlyClimate(placeOfProject(project), editionOfProject(project));
  const indoor = indoorOfProject(project);
  return { climate, indoor, air: climate.kind === 'unknown' ? [] : airAt(climate, indoor) };
});

/**
 * Follows the wall of a detail through a year at the place of its project.
 *
 * @returns what is missing, where wall or place leave it open
 * @see judgeWall
 */
export const wallYearOf = remembered((detail: Detail): WallYear | WallNotFollowed => {
  const read = wallOf(detail);
  if (read.kind === 'unread') {
    const [first] = read.missing;
    return {
      kind: 'not followed',
      missing: [...new Set(read.missing.map((m) => m.missing))],
      reason: [...new Set(read.missing.map((m) => m.reason))].join('; '),
      at: first.at,
    };
  }
  const { project } = detail;
  if (project === undefined)
    return { kind: 'not followed', missing: ['project'], reason: 'no project says where it stands', at: detail.at };
  const { climate, indoor, air } = airOfProject(project);
  if (climate.kind === 'unknown')
    return { kind: 'not followed', missing: climate.missing, reason: climate.reason, at: project.at };
  return {
    kind: 'followed',
    read,
    climate,
    indoor,
    air,
    judgement: judgeWall(read, air),
    assumptions: [...climate.text, indoor.text, ...read.assumptions],
  };
});
