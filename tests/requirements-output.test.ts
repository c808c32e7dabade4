/** What is printed for a section is a valid specification document, whatever the section holds. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { printRequirementsYaml } from '../src/output/requirements-yaml.js';
import { markdownProse } from '../src/reading/markdown-prose.js';
import { sourceFile } from '../src/reading/source.js';
import { validateDocument } from '../src/reading/validate.js';
import { readSection } from '../src/specification/read.js';

/** What the schema of a specification says against a document; nothing for a valid one. */
const faults = (document: unknown): unknown[] => validateDocument('specification', document);

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
    expect(faults(document)).toEqual([]);
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
    expect(faults(parse(printed)), printed).toEqual([]);
    expect(printed).not.toMatch(/[\u001b\u2028]/);
  });

  it('holds comments alone when nothing can be cited', () => {
    expect(parse(print('A lap of at least 3 inches.\n'))).toBeNull();
  });

  it.each(['07-27-26.txt', '07-27-10-excerpt.txt', 'own-lettered.txt', 'own-tables.md'])(
    'is valid for the whole of %s',
    (name) => {
      const text = readFileSync(path.join(import.meta.dirname, 'data/requirements', name), 'utf8');
      const prose = name.endsWith('.md') ? markdownProse(text) : { text, headings: undefined };
      const reading = readSection(prose.text, prose.headings === undefined ? {} : { headings: prose.headings });
      const printed = printRequirementsYaml({ file: sourceFile(name, text), reading, section: '07 27 26', title: 'B' });
      const document: unknown = parse(printed);
      if (name.startsWith('07-27-10')) expect(document).toBeNull();
      else expect(faults(document)).toEqual([]);
    },
  );

  it('lists every number that was passed over, with its place and why', () => {
    const printed = print(
      `${HEAD}A. "Thick" means more than 60 mils.\nB. Depth: one half of the width; see 7 others.\n`,
    );
    expect(printed).toContain('# 7:28 3.1.A, 60 mil: in a definition');
    expect(printed).toContain('# 8:11 3.1.B, 1/2: a share of something else');
    expect(printed).toContain('# 8:38 3.1.B, 7: no unit');
    expect(printed).toContain('3 numbers passed over');
  });
});
