/** One sentence for each way in which a document can fall short of its schema. */
import { isProblem, parseQuantity } from '../quantity/parse.js';
import { quoted } from '../quantity/problems.js';
import type { Dimension } from '../quantity/types.js';
import { DIMENSION_WORDS } from '../quantity/words.js';
import { dimensionOf } from './formats.js';
import { nearest } from './nearest.js';
import type { Cause, SchemaNode } from './schema-causes.js';
import { clause, example, found, here, listed, named, written } from './schema-words.js';
import type { SchemaProblem } from './validate.js';

/** More fields than this are not listed one by one. */
const MOST_LISTED = 24;

const TYPES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a map of fields',
};

function all(words: readonly string[]): string {
  if (words.length <= MOST_LISTED) return listed(words, 'and');
  return `${words.slice(0, MOST_LISTED).join(', ')} and ${words.length - MOST_LISTED} more`;
}

function wrong(cause: Cause, message: string): SchemaProblem {
  return { code: 'wrong-value', path: cause.path, message: `${named(cause.path, cause.node)}: ${message}` };
}

/** Found this, expected that. */
function unexpected(cause: Cause, expected: string): SchemaProblem {
  return wrong(cause, `found ${found(cause.value)}; expected ${expected}`);
}

function expectation(node: SchemaNode): string {
  const shown = example(node);
  return `${clause(node.description ?? 'another value')}${shown === undefined ? '.' : `, for example ${shown}.`}`;
}

function unknownField({ path, node, params }: Cause): SchemaProblem {
  const name = String(params['additionalProperty']);
  const fields = Object.keys(node.properties ?? {});
  const near = nearest(name, fields);
  const inside = fields.find((field) => Object.hasOwn(node.properties?.[field]?.properties ?? {}, name));
  const advice =
    near !== undefined
      ? `did you mean "${near}"?`
      : inside !== undefined
        ? `it stands under "${inside}".`
        : `known are ${all(fields)}.`;
  const message = `${quoted(name)} is not a known field ${here(node)}; ${advice}`;
  return { code: 'unknown-field', path: [...path, name], part: 'key', message };
}

function missingField({ path, node, params }: Cause): SchemaProblem {
  const name = String(params['missingProperty']);
  const field = node.properties?.[name] ?? {};
  const shown = example(field);
  const what = field.description === undefined ? '' : `: ${clause(field.description)}`;
  const how = shown === undefined ? '' : ` For example: ${name}: ${shown}`;
  return { code: 'missing-field', path, message: `The field "${name}" is missing ${here(node)}${what}.${how}` };
}

/** Exactly one of several fields must stand: none does, or more than one. */
function choice(cause: Cause): SchemaProblem {
  const { path, node, value, choice: keys = [] } = cause;
  const fields = Object.keys(value ?? {});
  const names = listed(keys.map(quoted));
  const given = keys.filter((key) => fields.includes(key));
  if (given.length > 0) {
    const both = listed(given.map(quoted), 'and');
    const message = `Only one of ${names} may stand ${here(node)}; found ${both}. Keep the one that is meant.`;
    return { code: 'wrong-value', path: [...path, given[1] ?? ''], part: 'key', message };
  }
  for (const field of fields) {
    const near = nearest(field, keys);
    if (near === undefined) continue;
    const message = `${quoted(field)} is not a known field ${here(node)}; did you mean "${near}"?`;
    return { code: 'unknown-field', path: [...path, field], part: 'key', message };
  }
  return {
    code: 'missing-field',
    path,
    message: `One of ${names} is needed ${here(node)}; none is given. Add the one that is meant.`,
  };
}

function withArticle(noun: string): string {
  return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;
}

/** A number that lacks its unit, or a text that cannot be read as a quantity of the dimension. */
function quantity(cause: Cause, dimension: Dimension): SchemaProblem {
  const { value, node, path } = cause;
  const noun = withArticle(DIMENSION_WORDS[dimension]);
  if (typeof value !== 'string' && typeof value !== 'number') {
    return unexpected(
      cause,
      `${noun} with its unit${node.examples === undefined ? '' : `, for example ${written(node.examples[0])}`}.`,
    );
  }
  const text = String(value);
  const result = parseQuantity(text, dimension);
  if (!isProblem(result)) return unexpected(cause, `${noun} as text; put it in quotes.`);
  if (result.problem === 'no unit') {
    const likely = result.units
      .map((unit) => `${text.trim()} ${unit}`)
      .find((candidate) => !isProblem(parseQuantity(candidate, dimension)));
    const shown = likely === undefined ? '' : `; for example ${quoted(likely)}`;
    const message = `${named(path, node)}: found ${found(value)}; ${noun} needs its unit: ${listed(result.units)}${shown}.`;
    return { code: 'wrong-unit', path, message };
  }
  const unit = result.problem === 'unknown unit' || result.problem === 'wrong dimension';
  return {
    code: unit ? 'wrong-unit' : 'wrong-value',
    path,
    message: `${named(path, node)}: ${result.message.replace(/^Found/, 'found')}`,
  };
}

function wrongType(cause: Cause): SchemaProblem {
  const { node, value, params } = cause;
  const dimension = dimensionOf(node.format ?? node.else?.format);
  if (dimension !== undefined) return quantity(cause, dimension);
  const types = [params['type']].flat().map(String);
  const expected = listed(types.map((type) => TYPES[type] ?? type));
  if (types.includes('string') && typeof value === 'number') {
    const shown = example(node);
    return unexpected(
      cause,
      `${expected}. Put it in quotes as it should read${shown === undefined ? '' : `, such as "${shown.replace(/^"|"$/g, '')}"`}.`,
    );
  }
  if (types.includes('array') && typeof value === 'string')
    return unexpected(cause, `${expected}. Put it in brackets: [${written(value)}]`);
  return unexpected(cause, `${expected}.`);
}

function wrongWord(cause: Cause): SchemaProblem {
  const allowed = cause.node.enum ?? [];
  const near = typeof cause.value === 'string' ? nearest(cause.value, allowed) : undefined;
  const guess = near === undefined ? '' : ` Did you mean "${near}"?`;
  return wrong(
    cause,
    `found ${found(cause.value)}.${guess} Allowed ${allowed.length === 1 ? 'is' : 'are'} ${listed(allowed, 'and')}.`,
  );
}

function wrongName({ path, node, params }: Cause): SchemaProblem {
  const name = String(params['propertyName']);
  const what = node.description === undefined ? '' : `: ${clause(node.description)}`;
  return {
    code: 'wrong-value',
    path: [...path, name],
    part: 'key',
    message: `${quoted(name)} cannot be a name ${here(node)}${what}.`,
  };
}

function wrongNumber(cause: Cause): SchemaProblem {
  const { minimum, maximum } = cause.node;
  return unexpected(cause, `a number from ${minimum} to ${maximum}.`);
}

/** How many there are, with the noun in its number. */
function counted(count: number, noun: string, plural: string): string {
  return count === 1 ? `1 ${noun}` : `${count} ${plural}`;
}

function wrongSize(cause: Cause): SchemaProblem {
  const { value, keyword, params } = cause;
  const limit = Number(params['limit']);
  const bound = keyword.startsWith('min') ? 'at least' : 'at most';
  if (typeof value === 'string') {
    if (value === '') return unexpected(cause, 'words; leave the field out when there is nothing to say.');
    return wrong(
      cause,
      `found ${counted(Array.from(value).length, 'character', 'characters')}; expected ${bound} ${limit}. Shorten it.`,
    );
  }
  const size = Array.isArray(value) ? value.length : Object.keys(value ?? {}).length;
  const advice = size === 0 ? 'Add one, or leave the field out.' : 'Split it.';
  return wrong(cause, `found ${counted(size, 'entry', 'entries')}; expected ${bound} ${limit}. ${advice}`);
}

/** The problem that a cause is reported as. */
export function problemOf(cause: Cause): SchemaProblem {
  switch (cause.keyword) {
    case 'additionalProperties':
      return unknownField(cause);
    case 'required':
      return missingField(cause);
    case 'oneOf':
      return choice(cause);
    case 'type':
      return wrongType(cause);
    case 'format': {
      const dimension = dimensionOf(cause.params['format']);
      return dimension === undefined ? unexpected(cause, expectation(cause.node)) : quantity(cause, dimension);
    }
    case 'enum':
      return wrongWord(cause);
    case 'propertyNames':
      return wrongName(cause);
    case 'minimum':
    case 'maximum':
      return wrongNumber(cause);
    case 'maxLength':
    case 'minLength':
    case 'maxItems':
    case 'minItems':
    case 'maxProperties':
    case 'minProperties':
      return wrongSize(cause);
    case 'const':
      return unexpected(cause, `${written(cause.params['allowedValue'])}.`);
    case 'pattern':
      return unexpected(cause, expectation(cause.node));
    default:
      throw new Error(
        `The schemas use "${cause.keyword}", for which schema-messages.ts has no words; add a case for it.`,
      );
  }
}
