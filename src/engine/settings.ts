/** The settings of a library as the engine uses them: levels and parameters by rule. */
import { parameterValues, type ParameterValues } from './parameters.js';
import type { Level } from './result.js';
import type { Rule } from './rule.js';
import { nearest } from '../model/nearest.js';
import type { ReadDocument, ReadingProblem } from '../reading/types.js';

export interface RuleSettings {
  readonly levelOf: (ruleId: string) => Level | 'off' | undefined;
  readonly parametersOf: (rule: Rule) => ParameterValues;
  readonly problems: readonly ReadingProblem[];
}

/**
 * Reads `rules:` of a settings document.
 *
 * @param document absent: every rule with its own level and defaults
 * @param rules all rules of the run; a rule id that is none of them is a problem that names the nearest
 */
export function ruleSettings(
  document: ReadDocument | undefined,
  rules: readonly Rule[],
  ownIds: readonly string[] = [],
): RuleSettings {
  const problems: ReadingProblem[] = [];
  const entries = (document?.data['rules'] ?? {}) as Record<
    string,
    { level?: Level | 'off'; parameters?: Record<string, unknown> }
  >;
  const ids = [...rules.map((r) => r.id), ...ownIds];
  const values = new Map<string, ParameterValues>();
  const report = (
    code: ReadingProblem['code'],
    path: readonly (string | number)[],
    part: 'key' | 'value',
    message: string,
  ): void => {
    if (document !== undefined)
      problems.push({ code, message, file: document.file, span: document.spanOf(path, part) });
  };
  for (const id of Object.keys(entries)) {
    if (ids.includes(id)) continue;
    const close = nearest(id, ids);
    report(
      'unknown-reference',
      ['rules', id],
      'key',
      `No rule is called "${id}"; ${close === undefined ? 'the command "lapwright rules" lists them' : `did you mean "${close}"?`}`,
    );
  }
  for (const rule of rules) {
    const { values: read, wrong } = parameterValues(rule, new Map(Object.entries(entries[rule.id]?.parameters ?? {})));
    values.set(rule.id, read);
    for (const w of wrong)
      report(
        w.part === 'key' ? 'unknown-field' : 'wrong-value',
        ['rules', rule.id, 'parameters', w.name],
        w.part,
        w.message,
      );
  }
  return {
    levelOf: (id) => entries[id]?.level,
    parametersOf: (rule) => values.get(rule.id) ?? parameterValues(rule, new Map()).values,
    problems,
  };
}
