/** Findings of the detail with the numbers of their comments, which they carry on its drawings, and what of the detail each one points at. */
import { causesOf, resultsOf } from '../comments.js';
import { isFinding } from '../report.js';
import type { Result } from '../../engine/result.js';
import type { Detail, Layer, Opening, Penetration, Work } from '../../model/types.js';
import type { Locus } from '../../reading/types.js';

/** The part of the detail a finding stands at. At most one is set; none when it is about the detail as a whole. */
export interface Target {
  readonly work?: Work;
  readonly layer?: Layer;
  readonly opening?: Opening;
  readonly penetration?: Penetration;
}

export interface NumberedFinding {
  /** Of the comment, from 1: the same on every drawing of the detail, in the report and in the letter. */
  readonly number: number;
  readonly result: Result;
  /** All findings of the comment. */
  readonly all: readonly Result[];
  /** The same finding at the other side: marked, and listed under the first. */
  readonly repeats: boolean;
  readonly title: string;
  readonly target: Target;
}

function targetAt(at: Locus, detail: Detail): Target | undefined {
  const own = detail.at.document;
  if (at.document.file.uri !== own.file.uri || at.document.id !== own.id) return undefined;
  const [list, index] = at.path;
  if (typeof index !== 'number') return undefined;
  const same = (thing: { readonly at: Locus }): boolean => thing.at.path[1] === index;
  switch (list) {
    case 'work': {
      const work = detail.work.find(same);
      return work === undefined ? undefined : { work };
    }
    case 'wall': {
      const layer = detail.layers.find(same);
      return layer === undefined ? undefined : { layer };
    }
    case 'openings': {
      const opening = detail.openings.find(same);
      return opening === undefined ? undefined : { opening };
    }
    case 'penetrations': {
      const penetration = detail.penetrations.find(same);
      return penetration === undefined ? undefined : { penetration };
    }
    default:
      return undefined;
  }
}

/**
 * Numbers the findings of a detail by comment: the one that leads it, and the same finding at the other side.
 *
 * @param results of any documents; only findings of this detail are taken
 * @param titleOf title of a rule by its id
 */
export function numberFindings(
  results: readonly Result[],
  detail: Detail,
  titleOf: (ruleId: string) => string,
): NumberedFinding[] {
  const own = results.filter((r) => isFinding(r) && r.documentId === detail.id);
  return causesOf(own).flatMap((cause, i) =>
    [cause.lead, ...cause.same].map((result): NumberedFinding => {
      const places = [result.at, ...(result.related ?? []).map((r) => r.at)];
      const target = places.map((at) => targetAt(at, detail)).find((t) => t !== undefined);
      return {
        number: i + 1,
        result,
        all: resultsOf(cause),
        repeats: result !== cause.lead,
        title: titleOf(result.ruleId),
        target: target ?? {},
      };
    }),
  );
}

/** The side of an opening that a finding speaks of, by the words of its subject. */
export function sideOf(finding: NumberedFinding): 'left' | 'right' | 'head' | 'sill' | undefined {
  const words = `${finding.result.subject ?? ''} ${finding.result.message}`;
  return (['left', 'right', 'head', 'sill'] as const).find((side) => new RegExp(`\\b${side}\\b`).test(words));
}
