/**
 * Which codes a project is under, and what may be asked of it: the note of one country's code binds nobody in another,
 * and a clause for houses is not the one for other buildings.
 */
import type { Outcome, Source } from './result.js';
import type { Project } from '../model/types.js';

/** IRC for houses and IBC for other buildings in the United States, NBC in Canada. */
export type CodeTitle = NonNullable<Project['code']>['title'];

/**
 * The codes a project may be under.
 *
 * @returns the one it names; both of the United States where it gives only a place, because places are climate zones
 * and counties there; `undefined` when it says neither
 */
export function codesOf(project: Project | undefined): readonly CodeTitle[] | undefined {
  if (project?.code !== undefined) return [project.code.title];
  const { zone, county, station } = project ?? {};
  return zone === undefined && county === undefined && station === undefined ? undefined : ['IRC', 'IBC'];
}

/** True when a source may be cited to a project under one of these codes; all may where the code is not known. */
export function appliesUnder(codes: readonly CodeTitle[] | undefined, source: Source): boolean {
  return codes === undefined || source.codes === undefined || source.codes.some((code) => codes.includes(code));
}

/** The outcome without the sources of other codes; the same one where it cites none. */
export function citedUnder(codes: readonly CodeTitle[] | undefined, outcome: Outcome): Outcome {
  const { sources } = outcome;
  if (codes === undefined || sources === undefined || sources.every((s) => appliesUnder(codes, s))) return outcome;
  return { ...outcome, sources: sources.filter((s) => appliesUnder(codes, s)) };
}
