/** Parameter values of a rule: its defaults, overridden by the settings of the library. */
import type { Parameter, Rule } from './rule.js';
import { isProblem, parseQuantity } from '../quantity/parse.js';
import { nearest } from '../model/nearest.js';

export type ParameterValues = ReadonlyMap<string, string | number | boolean>;

/**
 * Reads one value by the parameter's type.
 *
 * @returns the value (quantities in base units), or a sentence that says what is wrong with it
 */
export function readParameter(
  name: string,
  parameter: Parameter,
  given: unknown,
): { value: string | number | boolean } | { wrong: string } {
  const { type } = parameter;
  if (type === 'truth')
    return typeof given === 'boolean'
      ? { value: given }
      : { wrong: `The parameter "${name}" is true or false, not ${JSON.stringify(given)}.` };
  if (type === 'count') {
    return typeof given === 'number' && Number.isFinite(given) && given >= 0
      ? { value: given }
      : { wrong: `The parameter "${name}" is a plain number from 0 up, not ${JSON.stringify(given)}.` };
  }
  if (typeof type !== 'string') {
    return typeof given === 'string' && type.includes(given)
      ? { value: given }
      : { wrong: `The parameter "${name}" is one of ${type.join(', ')}, not ${JSON.stringify(given)}.` };
  }
  const quantity = parseQuantity(String(given), type);
  return isProblem(quantity) ? { wrong: `The parameter "${name}": ${quantity.message}` } : { value: quantity.value };
}

/** The values a rule runs with, and what is wrong with the settings for it. */
export function parameterValues(
  rule: Rule,
  set: ReadonlyMap<string, unknown>,
): { values: ParameterValues; wrong: { name: string; message: string; part: 'key' | 'value' }[] } {
  const declared = rule.parameters ?? {};
  const values = new Map<string, string | number | boolean>();
  const wrong: { name: string; message: string; part: 'key' | 'value' }[] = [];
  for (const [name, parameter] of Object.entries(declared)) {
    const fallback = readParameter(name, parameter, parameter.default);
    if ('wrong' in fallback)
      throw new Error(`Rule ${rule.id}: the default of its own parameter is wrong. ${fallback.wrong}`);
    const read = set.has(name) ? readParameter(name, parameter, set.get(name)) : fallback;
    if ('wrong' in read) wrong.push({ name, message: read.wrong, part: 'value' });
    values.set(name, 'wrong' in read ? fallback.value : read.value);
  }
  for (const name of set.keys()) {
    if (name in declared) continue;
    const close = nearest(name, Object.keys(declared));
    const known =
      Object.keys(declared).length === 0
        ? 'it has none'
        : close === undefined
          ? `it has ${Object.keys(declared).join(', ')}`
          : `did you mean "${close}"?`;
    wrong.push({ name, message: `The rule ${rule.id} has no parameter "${name}"; ${known}.`, part: 'key' });
  }
  return { values, wrong };
}
