/** The place that a project states, and the climate zone that follows from it. */
import { zoneOfPlace, type PlaceText, type ZoneAnswer } from './zone.js';
import { remembered } from '../model/remembered.js';
import type { Project } from '../model/types.js';

/** Zone, county, state and weather station as the project writes them. */
export function placeOfProject(project: Project): PlaceText {
  return {
    zone: project.zone?.value,
    county: project.county?.value,
    state: project.state?.value,
    station: project.station?.value,
  };
}

/** Year of the code edition that the project names. */
export function editionOfProject(project: Project): number | undefined {
  const edition = project.code?.edition;
  return edition !== undefined && Number.isFinite(edition) ? edition : undefined;
}

/**
 * Climate zone of a project: as declared, else of its county, else of its weather station; with what it rests on.
 *
 * The tables are read only when the zone is not declared in full.
 */
export const zoneOfProject = remembered((project: Project): ZoneAnswer =>
  zoneOfPlace(placeOfProject(project), editionOfProject(project)),
);

/** The zone as text, `5A`, or `4` where the letter is missing; `undefined` where it is not known. */
export function zoneTextOfProject(project: Project | undefined): string | undefined {
  const answer = project === undefined ? undefined : zoneOfProject(project);
  return answer === undefined || answer.kind === 'unknown' ? undefined : answer.zone;
}
