/** The schema published for SARIF 2.1.0. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { ROOT } from './command.js';

// Its draft-07 copy; its licence stands beside it.
const schema = JSON.parse(
  readFileSync(path.join(ROOT, 'tests/data/sarif/sarif-2.1.0.schemastore.json'), 'utf8'),
) as object;
const ajv = new Ajv({ strict: false, allErrors: true });
addFormats.default(ajv);
const validate = ajv.compile(schema);

/** What is wrong with a log by the schema; empty when it is valid. */
export const sarifErrors = (log: unknown): string => (validate(log) ? '' : ajv.errorsText(validate.errors));
