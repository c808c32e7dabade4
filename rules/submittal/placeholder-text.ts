import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import type { Stated } from '../../src/model/types.js';

const HABIT: Source = {
  basis: 'practice',
  citation: 'no placeholder in a submitted detail',
  provenance: 'common practice, no source',
};

/** Words that leave a question open, and the question. The longer wording stands before the shorter it contains. */
interface Placeholder {
  readonly words: RegExp;
  readonly asks: string;
  /** The words are fine when the rest of the sentence points at something that can be looked up. */
  readonly unlessReferred?: true;
}

const PLACEHOLDERS: readonly Placeholder[] = [
  { words: /\bby\s+others\b/i, asks: 'who does it, and which detail shows it' },
  {
    words: /\b(?:TB[ACD]|T\.B\.[ACD]\.?|to\s+be\s+(?:determined|decided|confirmed|advised))(?!\w)/i,
    asks: 'the value',
  },
  {
    words: /\b(?:field[ -]verify|verify\s+in\s+(?:the\s+)?field|V\.I\.F\.?|verify)(?!\w)/i,
    asks: 'the value, or who checks it against what',
  },
  { words: /\bfield[ -](?:fit|cut|measure|determined?|locate|adjust)\b/i, asks: 'the size and place' },
  {
    words:
      /\b(?:determined?|fit(?:ted)?|adjust(?:ed)?|locate[d]?|coordinate[d]?|resolve[d]?|decide[d]?)\s+in\s+(?:the\s+)?field\b/i,
    asks: 'the size and place',
  },
  {
    words: /\bas\s+(?:required|needed|necessary)\b/i,
    asks: 'how much, or which clause requires it',
    unlessReferred: true,
  },
  {
    words: /(?<!\bthan\s+)\bor\s+(?:approved\s+)?(?:equal|equivalent)\b(?!\s+to\b)/i,
    asks: 'the product itself; another product needs a request for substitution',
  },
  {
    words:
      /\b(?:per|according\s+to|accordance\s+with|follow(?:ing)?)\s+(?:the\s+)?manufacturer(?:['\u2019]?s|s['\u2019])?(?:\s+(?:written\s+|printed\s+|published\s+)?(?:instructions?|recommendations?|requirements?|details?|data|literature|guidelines))?(?!\w)/i,
    asks: 'which sheet or page',
    unlessReferred: true,
  },
];

/** A sheet, page, clause, standard or date within the rest of the sentence: the words can be looked up. */
const REFERENCE =
  /^[^;]*?(?:\b(?:page|sheet|section|table|figure|detail|drawing|clause|paragraph|article|edition|revision|dated|ASTM|AAMA|IRC|IBC|NBC|UFGS)\b[^;]*?\d|\b\d{4}-\d{2})/i;

interface Match {
  readonly start: number;
  readonly words: string;
  readonly asks: string;
}

/** Placeholders of a text, first to last, none inside another. */
function placeholders(text: string): Match[] {
  const found: Match[] = [];
  for (const { words, asks, unlessReferred } of PLACEHOLDERS) {
    for (const match of text.matchAll(new RegExp(words.source, 'gi'))) {
      const end = match.index + match[0].length;
      if (unlessReferred === true && REFERENCE.test(text.slice(end))) continue;
      if (found.some((f) => match.index < f.start + f.words.length && f.start < end)) continue;
      found.push({ start: match.index, words: match[0], asks });
    }
  }
  return found.sort((a, b) => a.start - b.start);
}

/** The place of the nth occurrence of some words in a text as it stands in the file, with its line breaks and escapes. */
function placeOf(text: Stated<string>, words: string, nth: number): Stated<string>['at'] {
  const { document, path, part } = text.at;
  const span = document.spanOf(path, part);
  const raw = document.file.text.slice(span.start, span.end);
  // A place within a quoted text counts from behind its opening quote.
  const written = /^["']/.test(raw) ? raw.slice(1) : raw;
  const pattern = words
    .split(/\s+/)
    .map((w) => w.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
    .join('\\s+');
  const match = [...written.matchAll(new RegExp(pattern, 'g'))][nth];
  return match === undefined
    ? text.at
    : { ...text.at, within: { start: match.index, end: match.index + match[0].length } };
}

/** No text of the detail leaves a decision to someone unnamed. */
export default defineRule({
  id: 'submittal/placeholder-text',
  title: 'Wording of the detail',
  summary: 'No text of the detail leaves a value, a product or a duty to be settled later.',
  level: 'warning',
  reads: ['title', 'notes', 'work.note', 'work.accept', 'work.method', 'wall.material', 'wall.finish'],
  sources: [HABIT],
  *review({ detail }) {
    let count = 0;
    for (const text of detail.texts) {
      const found = placeholders(text.value);
      for (const { start, words, asks } of found) {
        count += 1;
        const before = text.value.slice(0, start);
        const nth = before.split(words).length - 1;
        yield {
          kind: 'fail',
          at: placeOf(text, words, nth),
          subject: `wording "${words}"`,
          sources: this.sources,
          message: `"${words}" leaves a question open: ${asks}.`,
          required: asks,
          provided: `"${words}"`,
          correct: `Replace "${words}" by ${asks}.`,
        };
      }
    }
    if (count === 0 && detail.texts.length > 0) {
      yield {
        kind: 'pass',
        at: detail.at,
        subject: 'wording',
        sources: this.sources,
        message: `None of ${detail.texts.length} texts holds a placeholder.`,
      };
    }
  },
});
