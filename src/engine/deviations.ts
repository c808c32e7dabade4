/**
 * Deviations the documents declare: an accepted one that is in force suppresses its result; one that is expired,
 * not accepted or without effect is reported itself.
 */
import { acceptedUnder, mayNot, rolesText } from './acceptance.js';
import { idsOnPath } from './fingerprint.js';
import type { FinishedResult } from './finished-result.js';
import type { Basis, Outcome, Result, Source } from './result.js';
import { nearest } from '../model/nearest.js';
import type { Deviation, Requirement, Stated } from '../model/types.js';

/** What became of one deviation in one detail, or over all details of a submittal. */
export interface DeviationUse {
  /** Breaches it names. */
  readonly covers: readonly Result[];
  /** Of these, the ones that break another binding source too: nobody has accepted that. */
  readonly beyond: readonly Result[];
}

/** `deviation DEV-2`, `the deviation from 3.2.B.1`. */
export const deviationName = (d: Deviation): string =>
  d.id === undefined ? `the deviation from ${departsFrom(d)}` : `deviation ${d.id}`;

/** `3.2.B.1`, `lap/end-dam`, or `3.2.B.1 as lap/end-dam holds it`. */
export function departsFrom({ rule, paragraph }: Deviation): string {
  if (paragraph === undefined) return rule?.value ?? '';
  return rule === undefined ? paragraph.value : `${paragraph.value} as ${rule.value} holds it`;
}

/** Section number of the specification that a requirement stands in. */
export function sectionOf(requirement: Requirement): string | undefined {
  const section = requirement.at.document.data['section'];
  return typeof section === 'string' ? section : undefined;
}

function isOfParagraph(deviation: Deviation, source: Source | undefined): boolean {
  const requirement = source?.requirement;
  if (requirement?.paragraph?.value !== deviation.paragraph?.value || requirement === undefined) return false;
  return deviation.section === undefined || deviation.section === sectionOf(requirement);
}

function matches(deviation: Deviation, ruleId: string, outcome: Outcome): boolean {
  if (deviation.rule !== undefined && deviation.rule.value !== ruleId) return false;
  // Only the source that governs was departed from; what the others ask, nobody was asked to give up.
  if (deviation.paragraph !== undefined && !isOfParagraph(deviation, outcome.sources?.[0])) return false;
  return (
    deviation.of === undefined ||
    idsOnPath(outcome.at).includes(deviation.of.value) ||
    (outcome.related ?? []).some((r) => idsOnPath(r.at).includes(deviation.of?.value ?? ''))
  );
}

/**
 * True from the day after its last day.
 *
 * @param today ISO date (YYYY-MM-DD), as `until` is: such dates compare as text
 */
export function isExpired({ until }: Pick<Deviation, 'until'>, today: string): boolean {
  return until !== undefined && until.value < today;
}

/** Sources that bind the parties; a guide or a habit does not. */
const BINDING: ReadonlySet<Basis> = new Set<Basis>(['code', 'specification', 'product data', 'physics']);

/** Binding sources that a breach breaks beside the one a deviation departs from. */
export function brokenBeyond(deviation: Deviation, result: Outcome): Source[] {
  if (deviation.paragraph === undefined) return [];
  return (result.alsoBroken ?? []).filter((s) => BINDING.has(s.basis) && !isOfParagraph(deviation, s));
}

/**
 * Suppresses what accepted deviations cover.
 *
 * @param today ISO date (YYYY-MM-DD) of the review
 * @param ran ids of the rules that ran: a deviation from a rule that did not run says nothing
 * @param known ids of all rules there are, those turned off and the engine's own among them
 * @param roles roles that may accept a deviation
 * @returns what is wrong with the deviations themselves, and what each one covers; those of a submittal are judged
 * over all its details, not here
 */
export function applyDeviations(
  results: readonly FinishedResult[],
  deviations: readonly Deviation[],
  today: string,
  ran: ReadonlySet<string>,
  known: ReadonlySet<string>,
  roles: readonly string[],
): { readonly outcomes: readonly OwnOutcome[]; readonly uses: ReadonlyMap<Deviation, DeviationUse> } {
  const uses = new Map<Deviation, { covers: Result[]; beyond: Result[] }>();
  const isInForce = (d: Deviation): boolean => !isExpired(d, today) && acceptedUnder(d, roles) !== undefined;
  for (const result of results) {
    if (result.kind !== 'fail') continue;
    const named = deviations.filter((d) => matches(d, result.ruleId, result));
    const deviation = named.find(isInForce) ?? named[0];
    if (deviation === undefined) continue;
    const use = uses.get(deviation) ?? { covers: [], beyond: [] };
    uses.set(deviation, use);
    use.covers.push(result);
    const acceptedBy = acceptedUnder(deviation, roles);
    if (brokenBeyond(deviation, result).length > 0) use.beyond.push(result);
    else if (isInForce(deviation) && acceptedBy !== undefined)
      result.suppressBy({
        name: deviationName(deviation),
        justification: deviation.reason.value,
        acceptedBy,
        ...(deviation.until === undefined ? {} : { until: deviation.until.value }),
        at: deviation.at,
      });
    else if (acceptedBy === undefined && !isExpired(deviation, today))
      result.declareBy({
        name: deviationName(deviation),
        reason: deviation.reason.value,
        ...(deviation.acceptedBy === undefined ? {} : { refused: `${deviation.acceptedBy.value}, ${mayNot(roles)}` }),
      });
  }
  const ofDetail = deviations.filter((d) => d.at.document.kind !== 'submittal');
  const outcomes = ofDetail
    .filter((d) => d.rule === undefined || ran.has(d.rule.value))
    .flatMap((d) => outcomesOfDeviation(d, uses.get(d), today, 'this detail', roles));
  const strange = ofDetail.flatMap((d) =>
    d.rule === undefined || known.has(d.rule.value) ? [] : [unknownRule(d, d.rule, known)],
  );
  return { outcomes: [...outcomes, ...strange], uses };
}

function unknownRule(d: Deviation, rule: Stated<string>, known: ReadonlySet<string>): OwnOutcome {
  const close = nearest(rule.value, [...known]);
  return {
    ruleId: 'deviation/unused',
    outcome: {
      kind: 'fail',
      at: rule.at,
      subject: deviationName(d),
      message: `${deviationName(d)} covers no finding: there is no rule "${rule.value}" in this review${close === undefined ? '' : `; did you mean "${close}"?`}`,
      correct: 'Correct the id of the rule, or name the pack that holds it with --pack.',
    },
  };
}

/** An outcome of one of the engine's own rules. */
export interface OwnOutcome {
  readonly ruleId: string;
  readonly outcome: Outcome;
}

/**
 * What is wrong with one deviation; nothing when it is accepted, in force and covers a breach.
 *
 * @param where `this detail`, for the message
 * @param roles roles that may accept a deviation
 */
export function outcomesOfDeviation(
  d: Deviation,
  use: DeviationUse | undefined,
  today: string,
  where: string,
  roles: readonly string[],
): OwnOutcome[] {
  const name = deviationName(d);
  const common = { kind: 'fail' as const, at: d.at, subject: name };
  if (use === undefined) {
    const message = `${name} covers no finding: nothing in ${where} breaks ${departsFrom(d)}${d.of === undefined ? '' : ` at "${d.of.value}"`}.`;
    const correct = `Take the entry out, or correct the ${d.rule === undefined ? 'paragraph' : 'rule'} or the thing it names ("of").`;
    return [
      {
        ruleId: 'deviation/unused',
        outcome: { ...common, at: (d.rule ?? d.paragraph)?.at ?? d.at, message, correct },
      },
    ];
  }
  if (isExpired(d, today))
    return [
      {
        ruleId: 'deviation/expired',
        outcome: {
          ...common,
          at: d.until?.at ?? d.at,
          message: `${name} ended on ${d.until?.value ?? ''}; its finding stands again.`,
          correct: 'Have it accepted anew with a later date, or correct the detail.',
        },
      },
    ];
  if (acceptedUnder(d, roles) === undefined)
    return [
      {
        ruleId: 'deviation/not-accepted',
        outcome:
          d.acceptedBy === undefined
            ? {
                ...common,
                message: `${name} is declared but nobody has accepted it; its finding stands.`,
                correct: 'Name the role that accepted it under "acceptedBy", or correct the detail.',
              }
            : {
                ...common,
                at: d.acceptedBy.at,
                message: `${name} is stated as accepted by ${d.acceptedBy.value}, ${mayNot(roles)}. Its finding stands.`,
                required: `acceptance by ${rolesText(roles)}`,
                provided: `acceptance by ${d.acceptedBy.value}`,
                correct: `Have it accepted by ${rolesText(roles)}, or correct the detail.`,
              },
      },
    ];
  const [first] = use.beyond;
  if (first === undefined) return [];
  const sources = brokenBeyond(d, first);
  const cited = [...new Set(sources.map((s) => s.citation))].join(', ');
  return [
    {
      ruleId: 'deviation/covers-part',
      outcome: {
        ...common,
        message: `${name} is accepted and covers ${departsFrom(d)} alone; ${first.subject ?? first.documentId} (${first.provided ?? 'as drawn'}) breaks ${cited} too, so the finding stands.`,
        correct: `Meet ${cited}, or have that accepted too.`,
        sources,
        related: use.beyond.map((r) => ({ message: r.message, at: r.at })),
      },
    },
  ];
}
