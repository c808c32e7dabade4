/** What the code of the project says about an interior class: the place and edition first, then the cell. */
import {
  EDITIONS,
  type EditionTables,
  type PermittedCell,
  type TableClass,
  type TableZone,
} from './data/permitted-tables.js';
import { tableZone } from './zone.js';
import { zoneOfProject } from '../climate/project-place.js';
import type { Project } from '../model/types.js';

export interface KnownPlace {
  readonly kind: 'known';
  readonly tables: EditionTables;
  readonly zone: TableZone;
  /** As written, `5A`. */
  readonly zoneText: string;
  /** `IBC 2021` */
  readonly codeText: string;
}
export type Jurisdiction =
  | KnownPlace
  /** The Canadian code: a permeance limit instead of classes. */
  | { readonly kind: 'Canada' }
  /** Fields of the project that are missing; `reason` says what is wrong with one that is there. */
  | { readonly kind: 'missing'; readonly missing: readonly string[]; readonly reason: string }
  /** An edition whose tables are not held. */
  | { readonly kind: 'not held'; readonly codeText: string };

/** Zone and code edition of a project, ready for the tables. */
export function jurisdiction(project: Project | undefined): Jurisdiction {
  if (project?.code?.title === 'NBC') return { kind: 'Canada' };
  const answer = project === undefined ? undefined : zoneOfProject(project);
  const zoneText = answer === undefined || answer.kind === 'unknown' ? undefined : answer.zone;
  const zone = zoneText === undefined ? undefined : tableZone(zoneText);
  const code = project?.code;
  const missing: string[] = [];
  const reasons: string[] = [];
  if (zone === undefined) {
    // A county that cannot be found, or that changed its zone, is told as such.
    const why = answer?.kind === 'unknown' ? answer : undefined;
    missing.push(...(why?.missing ?? ['project.place.zone']));
    reasons.push(why?.reason ?? 'the climate zone is not stated');
  } else if (zone === 'unknown marine') {
    missing.push('project.place.zone');
    reasons.push('climate zone 4 stands without its letter, and marine 4 (4C) has the rules of the cold zones');
  }
  if (code === undefined || !Number.isFinite(code.edition)) {
    if (!missing.includes('project.code')) missing.push('project.code');
    reasons.push('the building code and its edition are not stated');
  }
  if (zone === undefined || zone === 'unknown marine' || code === undefined || !Number.isFinite(code.edition))
    return { kind: 'missing', missing, reason: reasons.join('; ') };
  const codeText = `${code.title} ${code.edition}`;
  const tables = EDITIONS.find((e) => e.title === code.title && e.edition === code.edition);
  return tables === undefined
    ? { kind: 'not held', codeText }
    : { kind: 'known', tables, zone, zoneText: zoneText as string, codeText };
}

/** The cell for a class at a place. */
export function permitted(place: KnownPlace, vaporClass: TableClass): PermittedCell {
  return place.tables.permitted[place.zone][vaporClass];
}

/** The classes that a zone permits without conditions, and those with, as words: `class II, or class III under conditions`. */
export function permittedWords(place: KnownPlace): string {
  const row = place.tables.permitted[place.zone];
  const plain = (['I', 'II', 'III'] as const).filter((c) => row[c].permission === 'yes');
  const text = plain.length === 0 ? '' : `class ${plain.join(' or ')}`;
  return row.III.permission === 'conditions' ? `${text}${text === '' ? '' : ', or '}class III under conditions` : text;
}

/** Editions whose tables are held, as words for a message. */
export function heldEditions(): string {
  return (['IRC', 'IBC'] as const)
    .map(
      (title) =>
        `${title} ${EDITIONS.filter((e) => e.title === title)
          .map((e) => e.edition)
          .join(', ')}`,
    )
    .join('; ');
}
