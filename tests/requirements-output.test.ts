/** What is printed for a section is a valid specification document, whatever the section holds. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import Ajv2020 from 'ajv/dist/2020.js';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { MEASURES, SUBJECTS } from '../src/model/measures.js';
import { printRequirementsYaml } from '../src/output/requirements-yaml.js';
import { sourceFile } from '../src/reading/source.js';
import { readSection } from '../src/specification/read.js';

const common = JSON.parse(readFileSync(path.resolve(import.meta.dirname, '../schemas/common.schema.json'), 'utf8')) as {
  $defs: Record<string, object>;
};
const { sectionNumber, word, prose } = common.$defs;
const paragraph = { type: 'string', maxLength: 64, pattern: '^\\d{1,2}\\.\\d{1,2}(\\.[A-Za-z0-9]{1,4}){0,8}$' };
const value = { type: ['string', 'number'] };
const list = (properties: object, required: readonly string[]): object => ({
  type: 'array',
  minItems: 1,
  items: { type: 'object', additionalProperties: false, properties, required },
});
/** The shape of a specification with unconfirmed requirements, characteristics and submittals. */
const validate = new Ajv2020.default({ strict: false }).compile({
  type: 'object',
  additionalProperties: false,
  required: ['kind', 'section', 'title'],
  properties: {
    kind: { const: 'specification' },
    section: sectionNumber,
    title: word,
    requirements: list(
      {
        paragraph,
        confirmed: { const: false },
        property: { enum: Object.keys(MEASURES) },
        characteristic: word,
        subject: { enum: SUBJECTS },
        atLeast: value,
        atMost: value,
        equals: value,
        method: word,
        text: prose,
      },
      ['paragraph', 'confirmed', 'text'],
    ),
    submittals: list({ paragraph, item: { type: 'string' }, of: word, text: prose, confirmed: { const: false } }, [
      'paragraph',
      'item',
      'confirmed',
    ]),
  },
});

const HEAD = 'SECTION 07 27 26 - BARRIER\n\nPART 3 - EXECUTION\n\n3.1 WORK\n\n';
const print = (text: string): string =>
  printRequirementsYaml({
    file: sourceFile('s.txt', text),
    reading: readSection(text),
    section: '07 27 26',
    title: 'B',
  });

describe('a printed section', () => {
  it('is valid, with each value at its line and column', () => {
    const printed = print(`${HEAD}A. Lap the membrane\n   at least 3 inches (75 mm).\nB. Submit warranty for walls.\n`);
    const document: unknown = parse(printed);
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
    expect(printed).toContain('# 8:13 high: ');
    expect(document).toMatchObject({
      requirements: [{ paragraph: '3.1.A', confirmed: false, property: 'lap', atLeast: '3 in' }],
      submittals: [{ paragraph: '3.1.B', item: 'warranty' }],
    });
  });

  it('stays one document when the section is hostile', () => {
    const printed = print(
      `${HEAD}A. "Strength\\": { x\u001b[31m: [y] }\u2028kind: not less than 3 psi # end.\nB. - evil: at least 3 in\n`,
    );
    expect(validate(parse(printed)), printed).toBe(true);
    expect(printed).not.toMatch(/[\u001b\u2028]/);
  });

  it('holds comments alone when nothing can be cited', () => {
    expect(parse(print('A lap of at least 3 inches.\n'))).toBeNull();
  });
});
