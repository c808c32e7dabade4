/** What is to be corrected, one item for each requirement that is broken, with all places where it is. */
import type { ListItem, PhrasingContent } from 'mdast';
import { LEVEL_ORDER, type Result } from '../../engine/result.js';
import type { DetailResults } from '../grouping.js';
import { code, item, itemWith, joint, list, strong, words } from '../markdown-parts.js';
import { placeOfResult } from '../place.js';
import type { Review } from '../report.js';

const LEVEL_NAME = { error: 'error', warning: 'warning', note: 'note', none: '' } as const;

/** One place to correct; left and right of the same thing are one. */
interface Spot {
  readonly detailId: string;
  readonly results: Result[];
}
interface Item {
  readonly ruleId: string;
  readonly first: Result;
  readonly spots: Spot[];
}

/** The chapter on deviations says how these stand. */
function isToldElsewhere({ ruleId, at }: Result): boolean {
  if (ruleId === 'deviation/undeclared' || ruleId === 'substitution/accepted') return true;
  return ruleId.startsWith('deviation/') && at.document.kind === 'submittal';
}

function itemsOf(groups: readonly DetailResults[]): Item[] {
  const items = new Map<string, Item>();
  for (const { detail, findings } of groups) {
    for (const result of findings) {
      if (isToldElsewhere(result)) continue;
      const key = [result.level, result.ruleId, result.required ?? result.message, result.sources?.[0]?.citation].join(
        '\n',
      );
      const one = items.get(key) ?? { ruleId: result.ruleId, first: result, spots: [] };
      items.set(key, one);
      const { line } = placeOfResult(result);
      const twin = one.spots.find(
        ({ detailId, results: [r] }) =>
          detailId === detail.id &&
          r !== undefined &&
          placeOfResult(r).line === line &&
          r.correct === result.correct &&
          r.provided === result.provided,
      );
      if (twin === undefined) one.spots.push({ detailId: detail.id, results: [result] });
      else twin.results.push(result);
    }
  }
  // Stable, so that within a level the order is that of the documents.
  return [...items.values()].sort((a, b) => LEVEL_ORDER[b.first.level] - LEVEL_ORDER[a.first.level]);
}

/** The items, errors first. */
export function correctionItems(groups: readonly DetailResults[], review: Review): ListItem[] {
  const titles = new Map(review.rules.map((rule) => [rule.id, rule.title]));
  return itemsOf(groups).map((one) => {
    const title = titles.get(one.ruleId) ?? one.ruleId;
    const lead: PhrasingContent[] = [strong(title), joint(` (${LEVEL_NAME[one.first.level]}). `)];
    const [only, ...more] = one.spots;
    if (only === undefined) return item(...lead);
    if (more.length === 0) return item(...lead, ...single(only), ...places([only], one.ruleId));
    const sameCorrection = one.spots.every(({ results: [r] }) => r?.correct === one.first.correct);
    return itemWith(
      [
        ...lead,
        ...(one.first.required === undefined ? [] : [words(requirementOf(one.first))]),
        ...(sameCorrection && one.first.correct !== undefined ? [joint(' '), words(one.first.correct)] : []),
        joint(' '),
        code(one.ruleId),
      ],
      list(
        one.spots.map((spot) =>
          item(
            strong(spot.detailId),
            joint(': '),
            words(shortly(spot, one.first.required === undefined)),
            ...(sameCorrection || spot.results[0]?.correct === undefined
              ? []
              : [joint(' '), words(spot.results[0].correct)]),
            ...places([spot]),
          ),
        ),
      ),
    );
  });
}

/** `Required: at least 6 in (Section 07 27 26, 3.2.B.1).` */
function requirementOf({ required = '', sources }: Result): string {
  const citation = sources?.[0]?.citation;
  return `Required: ${required}${citation === undefined ? '' : ` (${citation})`}.`;
}

function single({ detailId, results }: Spot): PhrasingContent[] {
  const [result, ...twins] = results;
  if (result === undefined) return [];
  const also = twins.flatMap((r) => r.subject ?? []);
  return [
    strong(detailId),
    joint(': '),
    words(result.message),
    ...(also.length === 0 ? [] : [joint(' The same at '), words(also.join(', ')), joint('.')]),
    ...(result.correct === undefined ? [] : [joint(' '), words(result.correct)]),
  ];
}

/** `jambs of window: 4 in.`, or the whole message where there is no figure to compare. */
function shortly({ results }: Spot, whole: boolean): string {
  const [first] = results;
  const subjects = [...new Set(results.flatMap((r) => r.subject ?? []))];
  if (first === undefined) return '';
  if (whole || subjects.length === 0 || first.provided === undefined) return first.message;
  return `${subjects.join(', ')}: ${first.provided}.`;
}

function places(spots: readonly Spot[], ruleId?: string): PhrasingContent[] {
  const all = [
    ...new Set(
      spots.flatMap(({ results }) =>
        results.map((r) => {
          const { uri, line } = placeOfResult(r);
          return `${uri}:${String(line)}`;
        }),
      ),
    ),
  ];
  return [
    joint(' ('),
    ...all.flatMap((place, i): PhrasingContent[] => [...(i === 0 ? [] : [joint(', ')]), code(place)]),
    ...(ruleId === undefined ? [] : [joint(', '), words(ruleId)]),
    joint(')'),
  ];
}
