/** The deviations of a submittal, judged over all its details, and the differences that it does not declare. */
import { acceptedUnder } from '../acceptance.js';
import {
  deviationName,
  departsFrom,
  isExpired,
  outcomesOfDeviation,
  sectionOf,
  type DeviationUse,
  type OwnOutcome,
} from '../deviations.js';
import type { Result } from '../result.js';
import type { DeclaredItem } from './facts.js';
import { DEVIATIONS_IN_WRITING } from './rules.js';
import type { SubmittalCheck, SubmittalSubject } from './subject.js';
import type { Deviation, Requirement } from '../../model/types.js';

/** What one deviation covers in all details; `undefined` when nothing. */
function useOf(deviation: Deviation, { details }: SubmittalSubject): DeviationUse | undefined {
  const uses = details.flatMap(({ review }) => review.deviationUses.get(deviation) ?? []);
  if (uses.length === 0) return undefined;
  return { covers: uses.flatMap((u) => u.covers), beyond: uses.flatMap((u) => u.beyond) };
}

/** What is wrong with the deviations that the submittal declares, each told once. */
export function outcomesOfDeclared(subject: SubmittalSubject, ran: ReadonlySet<string>): OwnOutcome[] {
  const known = new Set(subject.details.map(({ review }) => review.documentId));
  return subject.submittal.deviations
    .filter((d) => d.rule === undefined || ran.has(d.rule.value))
    .flatMap((d) => {
      const { detail } = d;
      if (detail !== undefined && !known.has(detail.value))
        return [
          {
            ruleId: 'deviation/unused',
            outcome: {
              kind: 'fail' as const,
              at: detail.at,
              subject: deviationName(d),
              message: `${deviationName(d)} is for the detail "${detail.value}", which the submittal does not hold.`,
              correct: 'Correct the id of the detail, add the detail, or take the entry out.',
            },
          },
        ];
      return outcomesOfDeviation(
        d,
        useOf(d, subject),
        subject.today,
        detail === undefined ? 'the details of the submittal' : `"${detail.value}"`,
        subject.acceptingRoles,
      );
    });
}

interface Difference {
  readonly detailId: string;
  readonly requirement: Requirement;
  readonly results: Result[];
}

/** Breaches of a paragraph that no deviation names, one entry for each detail and paragraph. */
export function undeclaredIn({ details }: SubmittalSubject): readonly Difference[] {
  const found = new Map<string, Difference>();
  for (const { review } of details) {
    const covered = new Set([...review.deviationUses.values()].flatMap((use) => use.covers));
    // Requirements that contradict each other are for the designer to settle, not for the contractor to declare.
    const clashing = new Set(
      review.clashes.flatMap(({ limit }) => [limit.source.requirement, limit.conflict?.source.requirement]),
    );
    for (const result of review.results) {
      const requirement = result.sources?.[0]?.requirement;
      if (result.kind !== 'fail' || requirement === undefined) continue;
      if (covered.has(result) || clashing.has(requirement)) continue;
      if (result.suppression !== undefined || result.level === 'none') continue;
      const key = `${review.documentId}\n${requirement.citation}`;
      const known = found.get(key);
      if (known === undefined) found.set(key, { detailId: review.documentId, requirement, results: [result] });
      else known.results.push(result);
    }
  }
  return [...found.values()];
}

export const undeclared: SubmittalCheck = {
  ruleId: 'deviation/undeclared',
  *review(subject) {
    const { submittal } = subject;
    const found = undeclaredIn(subject);
    for (const { detailId, requirement, results } of found) {
      const [first] = results;
      if (first === undefined) continue;
      const paragraph = requirement.paragraph?.value ?? requirement.citation;
      yield {
        kind: 'fail',
        at: first.at,
        subject: `${detailId}, ${paragraph}`,
        required: `as ${requirement.citation} asks, or a declared deviation`,
        provided: 'neither',
        message: `${detailId} differs from ${requirement.citation} and no deviation is declared.`,
        correct: `Correct ${detailId}, or declare the deviation from ${paragraph} in the submittal with its reason and effect.`,
        sources: DEVIATIONS_IN_WRITING,
        related: [
          { message: `${requirement.citation} is required here`, at: requirement.at },
          ...results.slice(1).map((r) => ({ message: r.message, at: r.at })),
        ],
      };
    }
    if (found.length === 0 && subject.details.some(({ review }) => review.requirementsHeld.length > 0))
      yield {
        kind: 'pass',
        at: submittal.number.at,
        subject: 'declared differences',
        message: 'Every difference from the specification that was found is declared.',
        sources: DEVIATIONS_IN_WRITING,
      };
  },
};

/** How an accepted thing stands: `accepted by architect of record until 2027-06-30`. */
export function standing(
  { acceptedBy, until }: Pick<Deviation, 'acceptedBy' | 'until'>,
  { acceptingRoles, today }: Pick<SubmittalSubject, 'acceptingRoles' | 'today'>,
): string {
  if (acceptedBy === undefined) return 'declared, not accepted';
  if (acceptedUnder({ acceptedBy }, acceptingRoles) === undefined)
    return `declared, not accepted: ${acceptedBy.value} may not accept it`;
  const who = `accepted by ${acceptedBy.value}`;
  if (until === undefined) return who;
  return isExpired({ until }, today) ? `${who}; ended on ${until.value}` : `${who} until ${until.value}`;
}

/** The deviations and the undeclared differences, for the letter. */
export function declaredItems(subject: SubmittalSubject): DeclaredItem[] {
  const declared = subject.submittal.deviations.map((d): DeclaredItem => {
    const use = useOf(d, subject);
    const status = standing(d, subject);
    const covers = [...new Set((use?.covers ?? []).map((r) => r.documentId))];
    return {
      type: 'deviation',
      ...(d.id === undefined ? {} : { id: d.id }),
      departsFrom: withSection(d, subject),
      details: covers.length > 0 || d.detail === undefined ? covers : [d.detail.value],
      reason: d.reason.value,
      ...(d.effect === undefined ? {} : { effect: d.effect.value }),
      status:
        use === undefined
          ? `${status}; covers no finding`
          : use.beyond.length > 0
            ? `${status}; covers only part`
            : status,
      at: d.at,
    };
  });
  const byParagraph = new Map<string, { readonly first: Difference; readonly details: string[] }>();
  for (const difference of undeclaredIn(subject)) {
    const known = byParagraph.get(difference.requirement.citation);
    if (known === undefined)
      byParagraph.set(difference.requirement.citation, { first: difference, details: [difference.detailId] });
    else known.details.push(difference.detailId);
  }
  const missing = [...byParagraph.values()].flatMap(({ first, details }): DeclaredItem[] => {
    const [result] = first.results;
    const from = first.requirement.paragraph?.value ?? first.requirement.citation;
    const section = sectionOf(first.requirement);
    return result === undefined
      ? []
      : [
          {
            type: 'not declared',
            departsFrom: section === subject.submittal.section.value ? from : first.requirement.citation,
            details,
            status: 'not declared: correct the detail, or declare it with reason and effect',
            at: result.at,
          },
        ];
  });
  return [...declared, ...missing];
}

/** The section is said where it is not that of the submittal. */
function withSection(d: Deviation, { submittal }: SubmittalSubject): string {
  const from = departsFrom(d);
  return d.section === undefined || d.section === submittal.section.value ? from : `${d.section}, ${from}`;
}
