/** What the engine itself reports: documents that cannot be read, deviations and requirements that do not hold. */
import type { Level, Source } from './result.js';
import { SUBMITTAL_RULES } from './submittal/rules.js';

export interface OwnRule {
  readonly id: string;
  readonly title: string;
  readonly level: Exclude<Level, 'none'>;
  readonly summary: string;
  readonly help: string;
  readonly sources?: readonly Source[];
}

const own = (id: string, title: string, level: OwnRule['level'], summary: string, help: string): OwnRule => ({
  id,
  title,
  level,
  summary,
  help,
});

export const OWN_RULES: readonly OwnRule[] = [
  ...SUBMITTAL_RULES,
  own(
    'deviation/expired',
    'Deviation expired',
    'warning',
    'An accepted deviation is in force until its date.',
    'The entry under `deviations` has an `until` date that is past. The finding it covered counts again. Have it accepted anew or correct the detail.',
  ),
  own(
    'deviation/not-accepted',
    'Deviation not accepted',
    'warning',
    'A deviation counts only when somebody with the authority accepted it.',
    "The entry under `deviations` has no `acceptedBy`, or one that is not among the roles that may accept it (`acceptingRoles` of the project; without it architect, architect of record, engineer of record, building official, owner, owner's representative: common practice, no source). Name the role that accepted it, or correct the detail.",
  ),
  own(
    'deviation/unused',
    'Deviation without effect',
    'note',
    'Every declared deviation covers a finding.',
    'Nothing breaks the rule or the paragraph that the entry names. Left in place it would hide a later mistake.',
  ),
  own(
    'document/circular-precedence',
    'Circular order of precedence',
    'error',
    'Sources go before each other in an order, not in a circle.',
    'Each entry under `precedence` of the project puts one source before another. The entries in the message close a circle, so that none of them could govern. Take one of them out.',
  ),
  own(
    'document/circular-reference',
    'Circular reference',
    'error',
    'Documents do not refer to each other in a circle.',
    'Follow the chain in the message and take one of the references out.',
  ),
  own(
    'document/empty-file',
    'Empty document',
    'error',
    'A document holds something.',
    'The file is empty or holds only comments. A document starts with `kind:`.',
  ),
  own(
    'document/malformed-yaml',
    'Malformed YAML',
    'error',
    'A document is well-formed YAML.',
    'The text could not be read as YAML at the place shown. Usual causes: a tab used for indentation, a missing space after a colon, a quote that is not closed, a list item out of line.',
  ),
  own(
    'document/missing-field',
    'Missing field',
    'error',
    'A document has the fields its kind needs.',
    'Add the field named in the message; the schema of the kind describes it.',
  ),
  own(
    'document/repeated-id',
    'Id used twice',
    'error',
    'An id names one thing.',
    'Two entries or documents within reach of each other carry the same id, so a reference to it would be ambiguous.',
  ),
  own(
    'document/repeated-paragraph',
    'Paragraph number used twice',
    'warning',
    'A paragraph number names one paragraph of a section.',
    'Two paragraphs in the text of the section carry the same number, so a citation of it is ambiguous. Number one of them anew.',
  ),
  own(
    'document/unknown-field',
    'Unknown field',
    'error',
    'A document holds only fields that its kind knows.',
    'An unknown field is an error because a misspelled one would otherwise be read as missing.',
  ),
  own(
    'document/unknown-kind',
    'Unknown kind of document',
    'error',
    'A document says which kind it is.',
    'The kinds are `detail`, `product`, `project`, `specification`, `submittal` and `settings`.',
  ),
  own(
    'document/unknown-paragraph',
    'Paragraph not in the text',
    'warning',
    'A requirement cites a paragraph that the text of its section has.',
    'The requirement stands in a Markdown file with the text of the section, and the text has no paragraph with its number. The requirement is held all the same. Correct the number, or add the paragraph.',
  ),
  own(
    'document/unknown-reference',
    'Unknown reference',
    'error',
    'What a document refers to exists and is within reach.',
    'A detail finds products in its own file and in the files listed under `documents` of the detail, its project and the settings of the library.',
  ),
  own(
    'document/unreadable-file',
    'Unreadable file',
    'error',
    'A file can be read.',
    'The file could not be opened, is not text, or is larger than a document may be.',
  ),
  own(
    'document/unsafe-content',
    'Unsafe content',
    'error',
    'A document holds plain data and stays within its library.',
    'Anchors, aliases, merge keys, tags, very deep nesting and references that leave the library are refused: details do not need them and they can be used to do harm.',
  ),
  own(
    'document/wrong-geometry',
    'Impossible geometry',
    'error',
    'What is described can exist on a wall.',
    'Openings do not overlap, sizes are above zero, and a piece is tucked only under what already hangs.',
  ),
  own(
    'document/wrong-unit',
    'Missing or wrong unit',
    'error',
    'A quantity carries a unit that fits.',
    'Write quantities with their unit, as on the drawing: `4 in`, `5-1/2 in`, `100 mm`, `12-15 mil`, `4.5 psf`, `6 %`, `2 h`.',
  ),
  own(
    'document/wrong-value',
    'Value not allowed',
    'error',
    'A field holds a value that it allows.',
    'The message lists what is allowed.',
  ),
  own(
    'requirement/condition-unknown',
    'Condition of a requirement unknown',
    'warning',
    'It can be told where a requirement applies.',
    'The requirement has a condition under `when`, and the field that would decide it is missing. The requirement was not held; state the field.',
  ),
  own(
    'requirement/contradiction',
    'Requirements contradict each other',
    'error',
    'Some value meets all requirements on one thing.',
    'Two sources set limits that no value meets together. Ask which governs. Where the contract orders its documents, state the order under `precedence` of the project.',
  ),
  own(
    'requirement/not-confirmed',
    'Requirement not confirmed',
    'warning',
    'A requirement is held once a person has confirmed it.',
    'The requirement says `confirmed: false`: a reading of the text proposed it and nobody has agreed yet. Nothing passes or fails by it. Read the paragraph and take the entry out, or take the requirement out.',
  ),
  own(
    'requirement/for-the-reviewer',
    'Requirement for the reviewer',
    'note',
    'A requirement that no check of the review holds is looked at by a person.',
    'Only the compliance matrix says so. No check knows what the requirement asks, or nothing in the details of the review shows it; the message says which. Look it up in the submittal, or add what is missing to a detail.',
  ),
  own(
    'requirement/product-not-used',
    'Product of a requirement not used',
    'note',
    'A requirement on a product is about one that a detail uses.',
    'The product is in reach, and no detail of this review uses it, so the requirement was held against nothing.',
  ),
  own(
    'requirement/unknown-product',
    'Product of a requirement not submitted',
    'warning',
    'A requirement on a product is about one that was submitted.',
    'No product document in reach has this id, so the requirement was held against nothing. Submit the product data, or correct the id.',
  ),
];
