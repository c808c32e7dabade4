/**
 * Compiles the JSON Schemas of the documents to plain functions, so that no schema compiler is loaded when a
 * command starts: writes generated/validators.cjs and its types.
 *
 * CommonJS, because the compiled code calls `require` for its string-length helper. One function for each kind
 * of document, entered only when a document of that kind is met: a run over details does not pay for settings.
 * The function takes the formats as its argument, so that a quantity is judged by the very parser that reads it
 * later (and finds it in that parser's memory), and generated code imports nothing of ours.
 */
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Ajv2020 from 'ajv/dist/2020.js';
import standaloneCode from 'ajv/dist/standalone/index.js';
import { _ } from 'ajv/dist/compile/codegen/index.js';

const root = new URL('../', import.meta.url);
const read = (name) => JSON.parse(readFileSync(new URL(`schemas/${name}`, root), 'utf8'));
const schemas = readdirSync(new URL('schemas/', root))
  .filter((name) => name.endsWith('.schema.json'))
  .sort()
  .map(read);

/** Every format name that the schemas use; what each one means is given when the validators are entered. */
const formats = new Set();
JSON.stringify(schemas, (key, value) => {
  if (key === 'format' && typeof value === 'string') formats.add(value);
  return value;
});

/** A compiler for one kind: instances are not shared, so that each function holds only what it needs. */
function compile(schema) {
  const ajv = new Ajv2020.default({
    strict: true,
    strictRequired: false, // it does not see, inside oneOf, the properties declared beside the oneOf
    allowUnionTypes: true, // a share is text or a number, a revision text or a number
    allErrors: true,
    messages: false, // we word them ourselves
    verbose: true, // errors carry the failing schema, from which the messages take their words
    formats: Object.fromEntries([...formats].map((name) => [name, () => true])),
    schemas: schemas.filter((other) => other.$id !== schema.$id),
    code: { source: true, esm: false, formats: _`formats` },
  });
  return standaloneCode.default(ajv, ajv.compile(schema));
}

const kinds = schemas.filter((schema) => schema.properties?.kind !== undefined);
const functions = kinds.map((schema) => {
  const kind = schema.properties.kind.const;
  return `exports[${JSON.stringify(kind)}] = function (formats) {\nconst module = { exports: {} };\n${compile(schema)}\nreturn module.exports;\n};\n`;
});

const types = `/** One rule of a schema that a document breaks, with the part of the schema that says so. */
export interface SchemaError {
  readonly instancePath: string;
  readonly schemaPath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly parentSchema?: Readonly<Record<string, unknown>>;
  readonly data?: unknown;
  readonly propertyName?: string;
}
export interface Validator {
  (data: unknown): boolean;
  readonly errors?: readonly SchemaError[] | null;
}
export type Formats = Readonly<Record<${[...formats]
  .sort()
  .map((name) => JSON.stringify(name))
  .join(' | ')}, (text: string) => boolean>>;
${kinds.map((schema) => `export function ${schema.properties.kind.const}(formats: Formats): Validator;`).join('\n')}
`;

mkdirSync(new URL('generated/', root), { recursive: true });
writeFileSync(new URL('generated/validators.cjs', root), `'use strict';\n${functions.join('')}`);
writeFileSync(new URL('generated/validators.d.cts', root), types);
process.stderr.write(
  `generated/validators.cjs written from ${kinds.length} schemas in ${fileURLToPath(new URL('schemas/', root))}\n`,
);
