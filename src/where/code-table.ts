/** What the vapor tables of the code say of a wall in each climate zone: the vapor rules, asked once for each zone. */
import type { Answer } from './answer.js';
import { reviewDetail } from '../engine/review.js';
import type { Result, Source } from '../engine/result.js';
import type { Rule } from '../engine/rule.js';
import type { RuleSettings } from '../engine/settings.js';
import { given } from '../model/entry.js';
import type { Detail, Project } from '../model/types.js';
import { rainLeftOut } from '../moisture/wall/exposed-masonry.js';
import { frameOf } from '../vapor/frame.js';
import { heldEditions, jurisdiction } from '../vapor/permitted.js';

/** The rules that hold a wall against the code tables of interior vapor retarders. */
export const TABLE_RULES: readonly string[] = [
  'vapor/class-three-conditions',
  'vapor/class-two-with-foam',
  'vapor/double-barrier',
  'vapor/interior-retarder-class',
  'vapor/required-retarder',
];
/** A pass of these says that a condition is met: the wall fits as long as it is kept. */
const CONDITIONAL: ReadonlySet<string> = new Set(['vapor/class-three-conditions', 'vapor/class-two-with-foam']);

export type Code = NonNullable<Project['code']>;

export interface TableAnswer {
  readonly answer: Answer;
  /** True where the wall does not meet a table, but one known from memory or by figures that are: look it up, then judge. */
  readonly toConfirm?: true;
  /** Sentences of the rules that led to the answer. */
  readonly reasons: readonly string[];
  /** Fields that would settle what cannot be told. */
  readonly missing: readonly string[];
  readonly sources: readonly Source[];
}

export interface TableRules {
  /** All rules of the run; those of `TABLE_RULES` are taken. */
  readonly rules: readonly Rule[];
  readonly settings: RuleSettings;
}

/**
 * The detail as if its project stood in a zone.
 *
 * Deviations are left out: they were accepted for one place.
 */
export function placedIn(detail: Detail, zone: string, code: Code): Detail {
  const { at } = detail;
  const project = detail.project ?? { at, id: detail.id, title: detail.title, standards: [] };
  return {
    ...detail,
    deviations: [],
    project: given<Project>({
      ...project,
      code,
      zone: { value: zone, at },
      county: undefined,
      state: undefined,
      station: undefined,
    }),
  };
}

const untold = (reason: string, missing: readonly string[] = []): TableAnswer => ({
  answer: 'cannot tell',
  reasons: [reason],
  missing,
  sources: [],
});

/** Results that decide, and the answer they give; the first that holds. */
const READINGS: readonly (readonly [Answer, (result: Result) => boolean])[] = [
  ['does not fit', (r) => r.kind === 'fail' && r.level === 'error'],
  // A table known from memory: the answer is its answer, to be confirmed in the code.
  ['does not fit', (r) => r.kind === 'fail' && r.sources?.[0]?.basis === 'code'],
  ['cannot tell', (r) => r.kind === 'open'],
  // A breach of a guide or a habit is no breach of a table.
  [
    'fits with conditions',
    (r) => r.kind === 'fail' || r.kind === 'review' || (r.kind === 'pass' && CONDITIONAL.has(r.ruleId)),
  ],
  ['fits', (r) => r.kind === 'pass'],
];

/**
 * Asks the vapor rules about the detail in one zone.
 *
 * @param zone `5A`; a zone 4 without its letter cannot be told
 */
export function tableAnswer(detail: Detail, zone: string, code: Code, { rules, settings }: TableRules): TableAnswer {
  const placed = placedIn(detail, zone, code);
  const place = jurisdiction(placed.project);
  if (place.kind === 'Canada') return untold('The code of the project is Canadian; its rule does not go by US zones.');
  if (place.kind === 'not held')
    return untold(`The tables of ${place.codeText} are not held here (held: ${heldEditions()}).`, ['project.code']);
  if (frameOf(detail) === undefined) return untold('The code tables speak of framed walls; none is drawn.', ['wall']);
  const asked = rules.filter((rule) => TABLE_RULES.includes(rule.id));
  const { results, notifications } = reviewDetail(placed, { rules: asked, settings, today: '' });
  const [broken] = notifications;
  if (broken !== undefined) return untold(broken.message);
  for (const [answer, decides] of READINGS) {
    const deciding = results.filter(decides);
    if (deciding.length === 0) continue;
    const missing = deciding.flatMap((r) => (r.kind === 'open' ? (r.missing ?? []) : []));
    const rain = answer === 'does not fit' ? undefined : rainLeftOut(detail);
    if (rain !== undefined)
      return untold(`The tables speak of vapor in drained walls. ${rain.told}`, [
        ...new Set([...rain.missing, ...missing]),
      ]);
    const toConfirm = answer === 'does not fit' && deciding.every((r) => r.level !== 'error');
    return {
      answer,
      ...(toConfirm ? { toConfirm } : {}),
      reasons: [...new Set(deciding.map((r) => r.message))],
      missing: [...new Set(missing)],
      sources: deciding.flatMap((r) => r.sources ?? []),
    };
  }
  return untold('No rule of the code tables had anything to say; the settings may turn them off.');
}
