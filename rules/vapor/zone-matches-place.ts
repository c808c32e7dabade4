import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { editionOfProject, placeOfProject } from '../../src/climate/project-place.js';
import { countyTable } from '../../src/climate/sources.js';
import { zoneFromTables, zoneParts, zonesAgree, type KnownZone, type UnknownMarine } from '../../src/climate/zone.js';
import type { Project } from '../../src/model/types.js';

const SOURCES: readonly Source[] = [countyTable(2021), countyTable(2015)];
type Told = KnownZone | UnknownMarine;

/** The declared climate zone against that of the county. */
export default defineRule({
  id: 'vapor/zone-matches-place',
  title: 'Climate zone of the place',
  summary: 'The climate zone that the project declares is the zone of its county in the code edition.',
  level: 'warning',
  reads: ['project.place.zone', 'project.place.county', 'project.place.state', 'project.place.station', 'project.code'],
  sources: SOURCES,
  caution: 'An aid to review: the climate zone that the adopted code and the local official assign governs.',
  *review({ detail }) {
    const { project } = detail;
    // The county table is that of the United States.
    if (project === undefined || detail.layers.length === 0 || project.code?.title === 'NBC') return;
    const place = placeOfProject(project);
    if (place.county === undefined && place.station === undefined) return;
    const frame = {
      at: { ...detail.at, path: [...detail.at.path, 'project'] },
      subject: 'climate zone',
      related: placesOf(project),
    };
    const declared = place.zone?.trim();
    const told = zoneFromTables(place, editionOfProject(project));
    if (told.kind !== 'unknown') {
      yield { ...frame, ...held(declared, told) };
      return;
    }
    // A gap of the table is not the author's to fill when the zone stands there.
    const gap = declared !== undefined && told.missing.includes('project.place.zone');
    yield {
      ...frame,
      sources: SOURCES,
      ...(declared === undefined ? {} : { provided: declared }),
      ...(gap ? { kind: 'review' } : { kind: 'open', missing: told.missing }),
      message:
        declared === undefined
          ? `The climate zone of the project cannot be told: ${told.reason}. State ${told.missing.join(' and ')}.`
          : `Whether the declared climate zone ${declared} is that of the place cannot be told: ${told.reason}. ${gap ? 'Look it up in the adopted code.' : `State ${told.missing.join(' and ')}.`}`,
    };
  },
});

type Verdict = Omit<Outcome, 'at' | 'subject' | 'related'>;

/** What the tables tell, against what is declared. */
function held(declared: string | undefined, told: Told): Verdict {
  const { sources, zone, text } = told;
  const change =
    told.differs === undefined ? '' : ` (${told.differs.upTo2018} up to 2018, ${told.differs.from2021} from 2021)`;
  if (declared === undefined) {
    if (told.kind === 'unknown marine')
      return {
        kind: 'open',
        sources,
        missing: told.missing,
        message: `The climate zone of the project cannot be told: ${text} is ${zone} without its letter, and marine 4 (4C) has rules of its own. State ${told.missing.join(' and ')}.`,
      };
    const provided = `${zone}, from the ${told.from}`;
    return told.otherTable === undefined
      ? { kind: 'pass', sources, provided, message: `The climate zone is ${zone}: ${text}${change}.` }
      : { kind: 'review', sources, provided, message: `The climate zone is taken as ${zone}: ${text}.` };
  }
  const common = { sources, required: zone, provided: declared };
  if (zonesAgree(declared, zone)) {
    if (told.kind === 'unknown marine' && zoneParts(declared)?.letter !== '')
      return {
        ...common,
        kind: 'review',
        message: `The project declares climate zone ${declared}; the county table has ${zone} without a letter (${text}). Look the letter up in the adopted code.`,
      };
    return {
      ...common,
      kind: 'pass',
      message: `The declared climate zone ${declared} agrees with ${zone}: ${text}${change}.`,
    };
  }
  const contradiction = `The project declares climate zone ${declared}, but ${zone} is the ${text}`;
  if (told.from === 'station')
    return {
      ...common,
      kind: 'review',
      message: `${contradiction}; a station beyond the border of a zone may still be the one that fits: confirm it.`,
    };
  if (told.otherTable !== undefined && zonesAgree(declared, told.otherTable))
    return { ...common, kind: 'review', message: `${contradiction}.` };
  return {
    ...common,
    kind: 'fail',
    message: `${contradiction}${otherEdition(declared, told)}.`,
    correct: `Declare zone ${zone}, or leave "zone" out so that it follows from the county; or correct the county or the code edition. Confirm in the adopted code.`,
  };
}

/** The usual slip: the zone of the other edition. */
function otherEdition(declared: string, { differs, zone }: Told): string {
  if (differs === undefined) return '';
  const [other, when] =
    zone === differs.from2021
      ? [differs.upTo2018, 'for code editions up to 2018']
      : [differs.from2021, 'for code editions from 2021'];
  return zonesAgree(declared, other) ? `; ${other} is its zone ${when}` : '';
}

function placesOf(project: Project): NonNullable<Outcome['related']> {
  return [
    ...(project.zone === undefined ? [] : [{ message: 'the zone is declared here', at: project.zone.at }]),
    ...(project.county === undefined ? [] : [{ message: 'the county is stated here', at: project.county.at }]),
    ...(project.zone === undefined && project.county === undefined
      ? [{ message: 'the project of this detail', at: project.at }]
      : []),
  ];
}
