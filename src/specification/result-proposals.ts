/** Proposals of a result in words, with what it is measured at. */
import { IN_BRACKETS, lower } from './confidence.js';
import { nameOf } from './naming.js';
import { isOptional, methodsOf, placed } from './placing.js';
import { readValue } from './printed.js';
import type { WordResult } from './results.js';
import type { Statement } from './statements.js';
import type { Confidence, Proposal, ReadValue } from './types.js';
import { conditionsIn } from './values.js';
import type { Part, Value } from './values.js';

/** "Fire propagation (NFPA 285): Pass." */
export function resultProposal(statement: Statement, result: WordResult, conditions: readonly ReadValue[]): Proposal {
  const { plain, label } = statement;
  const name = nameOf(statement, { until: result.start, from: 0, to: plain.length }, undefined, undefined);
  const methods = methodsOf(statement);
  const isNamed = label !== undefined && methods.length > 0;
  const isOpen = isOptional(statement, result.start);
  const confidence: Confidence = isNamed ? 'high' : 'medium';
  return {
    ...placed(statement, result.start, result.end),
    characteristic: label ?? result.words.replace(/^no (?:(?:visible|evidence of|signs? of|uncontrolled) )?/i, ''),
    ...(name.subject && { subject: name.subject }),
    compare: 'equals',
    value: { text: result.words },
    methods,
    conditions,
    confidence: isOpen ? lower(confidence) : confidence,
    reasons: [
      'a result in words',
      isNamed ? 'a named property with its method' : 'no label with a method names the property',
      ...(isOpen ? [IN_BRACKETS] : []),
    ],
  };
}

/**
 * "Leakage is measured at a test pressure of 75 Pa": nothing but the condition is stated, so it is what is asked for.
 *
 * @param words what is spoken of, with the title above
 */
export function statedConditions(statement: Statement, words: string): readonly Proposal[] {
  const { plain } = statement;
  const conditions = conditionsIn(plain, words);
  return conditions.flatMap((condition, at): Proposal[] => {
    const { found, unit } = condition;
    const before = conditions[at - 1];
    if (before !== undefined && isTwin(before, condition)) return [];
    const next = conditions[at + 1];
    const twin = next !== undefined && isTwin(condition, next) ? next : undefined;
    const place = { until: found.start, from: before?.end ?? 0, to: plain.length };
    const name = nameOf(statement, place, undefined, undefined);
    const isOpen = isOptional(statement, found.start);
    return [
      {
        ...placed(statement, found.start, (twin ?? condition).end),
        characteristic: name.characteristic ?? 'not named',
        ...(name.subject && { subject: name.subject }),
        compare: 'equals',
        value: readValue(found, unit),
        ...(twin && { also: readValue(twin.found, twin.unit) }),
        methods: methodsOf(statement),
        conditions: [],
        confidence: isOpen ? 'low' : 'medium',
        reasons: ['what a test is done at', 'a known unit', ...(isOpen ? [IN_BRACKETS] : [])],
      },
    ];
  });
}

function isTwin(one: Part, other: Part): boolean {
  return one.unit !== undefined && one.unit.kind === other.unit?.kind && one.unit.system !== other.unit.system;
}

/** All that a result in words is measured at, in the order of the text. */
export function conditionsOf(
  plain: string,
  words: string,
  values: readonly Value[],
): { readonly parts: readonly Part[]; readonly read: readonly ReadValue[] } {
  const own = values.flatMap((value): readonly Part[] => [
    value,
    ...(value.twin === undefined ? [] : [value.twin]),
    ...value.conditions,
  ]);
  const parts = own.length === 0 ? conditionsIn(plain, words) : own;
  const inOrder = [...parts].sort((a, b) => a.found.start - b.found.start);
  return { parts: inOrder, read: inOrder.map(({ found, unit }) => readValue(found, unit)) };
}
