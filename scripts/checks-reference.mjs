/**
 * Writes docs/checks.md: every check with its level, what must hold and what it rests on. With --check it writes
 * nothing and exits with 1 when the page is out of date.
 */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { cell, code, load, put, ROOT, table } from './documentation.mjs';

const RULES = path.join(ROOT, 'rules');

/** Folder and name of every rule, found as the build finds them. */
const ids = readdirSync(RULES, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && !entry.name.startsWith('_'))
  .flatMap(({ name: family }) =>
    readdirSync(path.join(RULES, family))
      .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
      .map((file) => `${family}/${file.slice(0, -3)}`),
  )
  .sort();

/** What each family looks at, from the table of rules/README.md. */
const families = new Map(
  [...readFileSync(path.join(RULES, 'README.md'), 'utf8').matchAll(/^\| `([a-z-]+)` \| (.+?) \|$/gm)].map(
    ([, name, about]) => [name, about],
  ),
);

const rules = [];
for (const id of ids) {
  try {
    const { default: rule } = await load(`export { default } from './rules/${id}.ts';`);
    if (rule?.id !== id) throw new Error(`its id is ${String(rule?.id)}`);
    rules.push(rule);
  } catch (error) {
    // One that cannot be read must not pass for one that does not exist.
    console.error(
      `The rule ${id} is missing from the page: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}`,
    );
    process.exitCode = 1;
  }
}
const { OWN_RULES, DIMENSION_WORDS } = await load(
  `export { OWN_RULES } from './src/engine/own-rules.ts'; export { DIMENSION_WORDS } from './src/quantity/words.ts';`,
);
const WRITTEN = { ...DIMENSION_WORDS, count: 'number', truth: 'true or false' };

function source({ citation, basis, provenance, url }) {
  const cited = url === undefined ? citation : `[${citation}](${url.replaceAll('(', '%28').replaceAll(')', '%29')})`;
  // Habits say the same in all three places; once is enough.
  if (provenance === 'common practice, no source')
    return citation === 'common practice' ? provenance : `${cited} (${provenance})`;
  return `${cited} (${[...new Set([basis, provenance])].join('; ')})`;
}

const name = (id) => (existsSync(path.join(RULES, `${id}.md`)) ? `[${id}](../rules/${id}.md)` : id);

function familySection(family) {
  const own = rules.filter((rule) => rule.id.startsWith(`${family}/`));
  const about = families.get(family);
  const parameters = own.flatMap((rule) =>
    Object.entries(rule.parameters ?? {}).map(([key, p]) => [
      code(rule.id),
      code(key),
      typeof p.type === 'string' ? (WRITTEN[p.type] ?? p.type) : p.type.map(code).join(', '),
      code(String(p.default)),
      p.meaning,
      source(p.source),
    ]),
  );
  return [
    `## ${family}`,
    ...(about === undefined ? [] : [`${about.charAt(0).toUpperCase()}${about.slice(1)}.`]),
    table(
      ['check', 'level', 'what must hold', 'rests on'],
      own.map((rule) => [name(rule.id), rule.level, rule.summary, rule.sources.map(source).join('<br>')]),
    ),
    ...own
      .filter((rule) => rule.caution !== undefined)
      .map((rule) => `Caution with ${code(rule.id)}: ${cell(rule.caution)}`),
    ...(parameters.length === 0
      ? []
      : [
          'Parameters that the settings may change:',
          table(['check', 'parameter', 'written as', 'default', 'meaning', 'default from'], parameters),
        ]),
  ].join('\n\n');
}

/** Rules of the engine's own, by family: of documents, of what is declared, of requirements, of a submittal as a whole. */
const ownTable = (family) => {
  const own = OWN_RULES.filter((rule) => rule.id.startsWith(`${family}/`)).sort((a, b) => (a.id < b.id ? -1 : 1));
  return table(
    ['check', 'level', 'what must hold', 'what to do, or what it rests on'],
    own.map((rule) => [
      name(rule.id),
      rule.level,
      rule.summary,
      rule.sources === undefined ? rule.help : rule.sources.map(source).join('<br>'),
    ]),
  );
};

put(
  'checks.md',
  `<!-- Written by scripts/checks-reference.mjs. Do not edit. -->

# Checks

All ${rules.length + OWN_RULES.length} checks, by family. \`lapwright explain CHECK\` prints the page of one, with examples
that pass and fail; [writing-details.md](writing-details.md) says how settings change a level or a parameter.

The checks are an aid to review. Local code, the contract documents and licensed practice govern; a check that passes
does not show that a wall complies or that it will perform.

## How to read the sources

After each source stand its basis and how well it is known.

${table(
  ['provenance', 'meaning'],
  [
    ['seen', 'the cited text, or a public extract of it, was read'],
    ['seen at second hand', 'read in a copy made by somebody else'],
    ['from memory, confirm', 'recalled and not read again; a breach is a warning at most'],
    ['common practice, no source', 'a habit of the trade'],
    ['computed', 'follows from physics or arithmetic'],
    ['project document', 'stands in a document of the review'],
  ],
)}

The level given is that of a breach of a limit from the code, the specification, product data or physics. Where only a
standard, a guide or practice stands behind the limit, a breach is a warning at most.

${[...new Set(rules.map((rule) => rule.id.split('/')[0]))].map(familySection).join('\n\n')}

## document

What is wrong with the documents themselves. Such a document is not reviewed until it is corrected.

${ownTable('document')}

## deviation

Differences from a rule or from a paragraph of the specification, declared or not.

${ownTable('deviation')}

## substitution

Products proposed in place of those specified.

${ownTable('substitution')}

## submittal as a whole

What a submittal contains and states, beside the checks of its details.

${ownTable('submittal')}

## requirement

What is wrong with the requirements of the specification.

${ownTable('requirement')}
`,
);
