/** Which source goes before which, where the contract orders them. */
import type { OfferedLimit } from './limits.js';
import type { Basis } from './result.js';
import { remembered } from '../model/remembered.js';
import type { LimitSource, Precedence, Project } from '../model/types.js';

/** `goesBefore(a, b)`: a limit of basis `b` gives way to one of basis `a`. */
export type GoesBefore = (a: Basis, b: Basis) => boolean;

/**
 * The order as stated, with what follows from it: what goes before a source goes before all that come after it.
 *
 * Nothing goes before the code, whose limits are the least that the law accepts, nor before what physics asks.
 */
export function orderOf(entries: readonly Precedence[]): GoesBefore {
  const after = new Map<Basis, Set<Basis>>();
  for (const { source } of entries) {
    if (after.has(source)) continue;
    const reached = new Set<LimitSource>();
    const open: LimitSource[] = [source];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      for (const entry of entries) {
        if (entry.source !== next || reached.has(entry.over)) continue;
        reached.add(entry.over);
        open.push(entry.over);
      }
    }
    reached.delete('code');
    after.set(source, reached);
  }
  return (a, b) => after.get(a)?.has(b) === true;
}

const ofProject = remembered((project: Project): GoesBefore => orderOf(project.precedence ?? []));

/** The order of a project; `undefined` when it states none, and the strictest limit governs. */
export function precedenceOf(project: Project | undefined): GoesBefore | undefined {
  return project?.precedence === undefined || project.precedence.length === 0 ? undefined : ofProject(project);
}

/** Limits on the same end, parted into those that stand and those that give way to another one of them. */
export function partedBy(
  order: GoesBefore | undefined,
  limits: readonly OfferedLimit[],
): { readonly standing: readonly OfferedLimit[]; readonly overruled: readonly OfferedLimit[] } {
  if (order === undefined) return { standing: limits, overruled: [] };
  // The order knows bases only, and they are few, however many the limits.
  const bases = new Set(limits.map((l) => l.source.basis));
  const givesWay = new Set([...bases].filter((basis) => [...bases].some((other) => order(other, basis))));
  const gives = (limit: OfferedLimit): boolean => givesWay.has(limit.source.basis);
  return { standing: limits.filter((l) => !gives(l)), overruled: limits.filter(gives) };
}
