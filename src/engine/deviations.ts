/**
 * Deviations the documents declare: an accepted one that is in force suppresses its result; one that is expired,
 * not accepted or without effect is reported itself.
 */
import { idsOnPath } from './fingerprint.js';
import type { FinishedResult } from './finished-result.js';
import type { Outcome } from './result.js';
import type { Deviation } from '../model/types.js';

const NAME = (d: Deviation): string =>
  d.id === undefined ? `the deviation from ${d.rule.value}` : `deviation ${d.id}`;

function matches(deviation: Deviation, ruleId: string, outcome: Outcome): boolean {
  if (deviation.rule.value !== ruleId) return false;
  return (
    deviation.of === undefined ||
    idsOnPath(outcome.at).includes(deviation.of.value) ||
    (outcome.related ?? []).some((r) => idsOnPath(r.at).includes(deviation.of?.value ?? ''))
  );
}

/** True from the day after its last day. Dates are ISO (YYYY-MM-DD), so they compare as text. */
function isExpired(deviation: Deviation, today: string): boolean {
  return deviation.until !== undefined && deviation.until.value < today;
}

/**
 * Suppresses what accepted deviations cover.
 *
 * @param today ISO date (YYYY-MM-DD) of the review
 * @param ran ids of the rules that ran: a deviation from a rule that did not run says nothing
 * @returns what is wrong with the deviations themselves
 */
export function applyDeviations(
  results: readonly FinishedResult[],
  deviations: readonly Deviation[],
  today: string,
  ran: ReadonlySet<string>,
): { ruleId: string; outcome: Outcome }[] {
  const used = new Set<Deviation>();
  for (const result of results) {
    if (result.kind !== 'fail') continue;
    const deviation = deviations.find((d) => matches(d, result.ruleId, result));
    if (deviation === undefined) continue;
    used.add(deviation);
    if (isExpired(deviation, today) || deviation.acceptedBy === undefined) continue;
    result.suppressBy({
      justification: deviation.reason.value,
      acceptedBy: deviation.acceptedBy.value,
      ...(deviation.until === undefined ? {} : { until: deviation.until.value }),
      at: deviation.at,
    });
  }
  const outcomes: { ruleId: string; outcome: Outcome }[] = [];
  for (const d of deviations) {
    const common = { kind: 'fail' as const, at: d.at, subject: NAME(d) };
    if (!ran.has(d.rule.value)) continue;
    if (!used.has(d)) {
      outcomes.push({
        ruleId: 'deviation/unused',
        outcome: {
          ...common,
          at: d.rule.at,
          message: `${NAME(d)} covers no finding: nothing in this detail breaks ${d.rule.value}${d.of === undefined ? '' : ` at "${d.of.value}"`}.`,
          correct: 'Take the entry out, or correct the rule or the "of" it names.',
        },
      });
    } else if (isExpired(d, today)) {
      outcomes.push({
        ruleId: 'deviation/expired',
        outcome: {
          ...common,
          at: d.until?.at ?? d.at,
          message: `${NAME(d)} ended on ${d.until?.value ?? ''}; its finding stands again.`,
          correct: 'Have it accepted anew with a later date, or correct the detail.',
        },
      });
    } else if (d.acceptedBy === undefined) {
      outcomes.push({
        ruleId: 'deviation/not-accepted',
        outcome: {
          ...common,
          message: `${NAME(d)} is declared but nobody has accepted it; its finding stands.`,
          correct: 'Name the role that accepted it under "acceptedBy", or correct the detail.',
        },
      });
    }
  }
  return outcomes;
}
