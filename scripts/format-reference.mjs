/**
 * Writes docs/format-reference.md: every field of every kind of document, from the schemas, with what the program
 * itself knows of quantities, places, families and properties. With --check it writes nothing and exits with 1 when
 * the page is out of date.
 */
import { put } from './documentation.mjs';
import { kindSections, textTable } from './reference-fields.mjs';
import { requirementTables } from './reference-requirements.mjs';
import { familyTable, messageSection, placeTable, quantityTables } from './reference-words.mjs';

const sections = [
  `<!-- Written by scripts/format-reference.mjs. Do not edit. -->

# Format reference

Every field of every kind of document. [writing-details.md](writing-details.md) explains them by example;
[checks.md](checks.md) lists what is checked.

- A document is YAML and begins with \`kind:\`. A file may hold several, with \`---\` on a line of its own between them.
- In Markdown a document is a fenced block whose info string is \`yaml\` and the kind, as in \`\`\` \`\`\`yaml detail \`\`\`; the
  \`kind\` entry may then be left out.
- A field that a kind does not know is refused, because a misspelled one would otherwise be read as missing.
- Anchors, aliases, merge keys, tags and directives are refused: write each value out.
- JSON is read too, as the part of YAML it is.

| kind | what it holds |
|---|---|
| [detail](#detail) | one condition of the wall: layers, openings, penetrations, edges, and the work in order |
| [product](#product) | what a data sheet declares of one product |
| [project](#project) | place, code, size and wind of the building, and which documents apply |
| [specification](#specification) | limits the project asks for, each tied to its paragraph |
| [submittal](#submittal) | what is sent in for review: number, contents, details, deviations, substitutions |
| [settings](#settings) | how a library of details is reviewed; the file \`lapwright.yaml\` at its root |

The rest of the page: [quantities](#quantities), [ids, texts and paths](#ids-texts-and-paths), [places](#places), [families](#families),
[properties](#properties), [subjects](#subjects), [messages](#messages).

The JSON Schemas (2020-12) in [schemas/](../schemas) say the same to an editor that can use them; their formats
(\`length\`, \`film\` ...) are the [quantities](#quantities).`,
  quantityTables(),
  textTable(),
  ...kindSections(),
  placeTable(),
  familyTable(),
  await requirementTables(),
  await messageSection(),
];
put('format-reference.md', `${sections.join('\n\n')}\n`);
