/** What a requirement can be about: properties and subjects, and which checks ask for them. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { code, load, ROOT, sameWords, table } from './documentation.mjs';
import { SUBJECT_MEANS } from './reference-texts.mjs';

const {
  BROADER,
  DIMENSION_WORDS,
  MEASURES,
  SUBJECTS,
  buildDetail,
  buildFace,
  governingLimit,
  readDocuments,
  sourceFile,
} = await load(`
  export { DIMENSION_WORDS } from './src/quantity/words.ts';
  export { BROADER, MEASURES, SUBJECTS } from './src/model/measures.ts';
  export { buildDetail } from './src/model/detail.ts';
  export { buildFace } from './src/geometry/face.ts';
  export { governingLimit } from './src/engine/limits-of-documents.ts';
  export { readDocuments } from './src/reading/documents.ts';
  export { sourceFile } from './src/reading/source.ts';`);

/** The field of a product that sets a limit of a property, found by asking for one and watching what is looked at. */
function productField(property, comparison) {
  const looked = [];
  const watch = (prefix) =>
    new Proxy(
      {},
      {
        get: (_target, key) => {
          if (key === 'least') return watch('least.');
          if (key !== 'id') looked.push(prefix + String(key).replace(/(?:Mm|Um)$/, ''));
          return undefined;
        },
      },
    );
  governingLimit({ requirements: [] }, { property, comparison, product: watch('') });
  return { wetFilm: 'wetFilm', dryFilm: 'dryFilm' }[looked[0]] ?? looked[0];
}

/**
 * Which rule asks for which property, about which subject: every rule is run on the examples of its own page, and
 * what it asks is written down.
 */
async function questions() {
  const asked = [];
  const rules = path.join(ROOT, 'rules');
  const ids = readdirSync(rules, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name: family }) =>
      readdirSync(path.join(rules, family))
        .filter((file) => file.endsWith('.md'))
        .map((file) => `${family}/${file.slice(0, -3)}`),
    )
    .filter((id) => existsSync(path.join(rules, `${id}.ts`)))
    .sort();
  const { parameterValues, ...byNumber } = await load(
    `export { parameterValues } from './src/engine/parameters.ts';\n${ids.map((id, i) => `export { default as rule${i} } from './rules/${id}.ts';`).join('\n')}`,
  );
  for (const [i, id] of ids.entries()) {
    const rule = byNumber[`rule${i}`];
    const { values } = parameterValues(rule, new Map());
    const { documents } = await readDocuments(
      sourceFile(`${id}.md`, readFileSync(path.join(rules, `${id}.md`), 'utf8')),
      { named: true },
    );
    const of = (kind) => documents.filter((d) => d.kind === kind);
    for (const document of of('detail')) {
      const project = of('project').find((p) => p.id === document.data.project) ?? of('project')[0];
      const { detail } = buildDetail(document, {
        products: new Map(of('product').map((d) => [d.id, d])),
        specifications: of('specification'),
        ...(project && { project }),
      });
      if (detail === undefined) continue;
      let face;
      const value = (name) => values.get(name);
      const limit = (query) => {
        asked.push({ id, property: query.property, subject: query.subject });
        return governingLimit(detail, query);
      };
      // Asking the rule for all its outcomes is what makes it ask for limits.
      void [
        ...rule.review({
          detail,
          get face() {
            return (face ??= buildFace(detail));
          },
          number: (name) => Number(value(name)),
          word: value,
          truth: value,
          limit,
        }),
      ];
    }
  }
  return asked;
}

const unique = (words) => [...new Set(words)];

export async function requirementTables() {
  sameWords('subjects', SUBJECT_MEANS, [...SUBJECTS]);
  const asked = await questions();
  const properties = Object.entries(MEASURES).map(([property, { dimension, meaning }]) => {
    const mine = asked.filter((q) => q.property === property);
    const sheet = unique(['at least', 'at most'].map((comparison) => productField(property, comparison))).filter(
      Boolean,
    );
    return [
      code(property),
      meaning,
      dimension === 'count' ? 'a whole number' : DIMENSION_WORDS[dimension],
      sheet.map(code).join(', '),
      unique(mine.map((q) => q.id))
        .sort()
        .join(', '),
      unique(mine.map((q) => (q.subject === undefined ? '(any)' : q.subject)))
        .sort()
        .join(', '),
    ];
  });
  const subjects = SUBJECTS.map((subject) => [
    code(subject),
    SUBJECT_MEANS[subject],
    Object.entries(BROADER)
      .filter(([, broad]) => broad === subject)
      .map(([narrow]) => code(narrow))
      .join(', '),
  ]);
  return `## Properties

What a requirement of a specification can set a limit for. A requirement takes effect where a check asks for its
property about its subject; one without a subject counts for every subject. The last two columns come from running each
check on the examples of its own page, so a check may ask about more than they show; "(any)" stands for a question that
names no subject, which only a requirement without a subject answers. A property that no check asks for may be written
down; it is held against nothing, and stays on the list of requirements as such.

${table(['property', 'meaning', 'written as', 'on a data sheet', 'asked by', 'asked about'], properties)}

## Subjects

${table(['subject', 'what it is', 'its requirements also count for'], subjects)}`;
}
