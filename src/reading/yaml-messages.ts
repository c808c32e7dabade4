/**
 * Plain sentences for what is wrong with the writing of a YAML text.
 *
 * The parser names causes in words of its grammar. Each is said here as what a person did and what to do.
 */

/** What the parser reports, and what is known about the text around it. */
export interface SyntaxFault {
  /** The parser's code and message. */
  readonly code: string;
  readonly message: string;
  /** The line the fault stands on, trimmed. */
  readonly line: string;
  /** Text from the fault on, to the end of its line. */
  readonly rest: string;
}

interface Sentence {
  readonly code: string;
  readonly pattern?: RegExp;
  /** Looked for in the line of the fault. */
  readonly line?: RegExp;
  readonly say: (fault: SyntaxFault) => string;
}

const QUOTE_IT = 'put the whole value in quotes';

const SENTENCES: readonly Sentence[] = [
  {
    code: 'UNEXPECTED_TOKEN',
    line: /[:-]\s+[<>]=?\s*\d/,
    say: ({ line }) =>
      `A value that begins with ${/[:-]\s+([<>]=?)/.exec(line)?.[1] ?? '>'} needs quotes; ${QUOTE_IT}.`,
  },
  {
    code: 'BLOCK_AS_IMPLICIT_KEY',
    pattern: /compact mappings/,
    say: () =>
      `A second ": " stands where one value is expected; ${QUOTE_IT}, or begin the entries of a map on a line of their own, indented.`,
  },
  {
    code: 'BLOCK_AS_IMPLICIT_KEY',
    say: () => 'A list stands where the name of an entry is expected; write "name:" before it.',
  },
  { code: 'TAB_AS_INDENT', say: () => 'The line is indented with a tab; indent with spaces.' },
  {
    code: 'BAD_INDENT',
    pattern: /end with a \}/,
    say: () =>
      'The { opened here is not closed with } before the next entry begins; close it, or indent what belongs inside.',
  },
  {
    code: 'BAD_INDENT',
    pattern: /end with a \]/,
    say: () =>
      'The [ opened here is not closed with ] before the next entry begins; close it, or indent what belongs inside.',
  },
  {
    code: 'MISSING_CHAR',
    pattern: /end with a \}/,
    say: () => 'The { opened here is never closed; add the missing }.',
  },
  {
    code: 'MISSING_CHAR',
    pattern: /end with a \]/,
    say: () => 'The [ opened here is never closed; add the missing ].',
  },
  {
    code: 'MISSING_CHAR',
    pattern: /closing "quote/,
    say: () => 'The double quote opened here is never closed; add the missing ".',
  },
  {
    code: 'MISSING_CHAR',
    pattern: /closing 'quote/,
    say: () => "The single quote opened here is never closed; add the missing '.",
  },
  {
    code: 'MISSING_CHAR',
    pattern: /map values/,
    say: () => 'A word stands here without a colon and a value; an entry is written "name: value".',
  },
  {
    code: 'MISSING_CHAR',
    pattern: /without - indicator/,
    say: () => 'An item of the list lacks its "- ", or is indented differently.',
  },
  {
    code: 'MISSING_CHAR',
    pattern: /Comments must/,
    say: () => `The # needs a space before it; or ${QUOTE_IT} when it belongs to it.`,
  },
  { code: 'MISSING_CHAR', pattern: /Missing space after :/, say: () => 'The colon needs a space after it.' },
  { code: 'MISSING_CHAR', pattern: /Missing ,/, say: () => 'A comma is missing between two entries.' },
  {
    code: 'BAD_INDENT',
    say: () =>
      'The line is indented differently from its neighbors; entries of one map or list begin in the same column.',
  },
  {
    code: 'MULTILINE_IMPLICIT_KEY',
    say: () =>
      'This line runs on into the next one, which holds an entry; write each entry as "name: value", those of one map beginning in the same column.',
  },
  {
    code: 'BAD_SCALAR_START',
    say: ({ rest }) => `A value cannot begin with ${rest.charAt(0)} unless it is quoted; ${QUOTE_IT}.`,
  },
  {
    code: 'BAD_DQ_ESCAPE',
    say: () => 'A backslash inside double quotes begins a special character; write \\\\, or use single quotes.',
  },
  {
    code: 'BLOCK_IN_FLOW',
    say: () => 'An entry inside { } or [ ] is not separated by a comma from the one before it.',
  },
  { code: 'KEY_OVER_1024_CHARS', say: () => 'The name of an entry is longer than 1,024 characters.' },
  {
    code: 'UNEXPECTED_TOKEN',
    pattern: /Unexpected , /,
    say: () => 'A comma stands where a value is expected; take it out, or write the missing value.',
  },
  { code: 'UNEXPECTED_TOKEN', pattern: /Unexpected empty item/, say: () => 'A value is missing between two commas.' },
  {
    code: 'UNEXPECTED_TOKEN',
    pattern: /at node end/,
    say: () =>
      `Text follows a value that is already complete; ${QUOTE_IT}, quotes inside it included (single quotes around double ones).`,
  },
  {
    code: 'UNEXPECTED_TOKEN',
    pattern: /flow-(?:seq|map)-end|flow-error-end/,
    say: ({ rest }) => `The ${rest.charAt(0)} closes nothing; take it out.`,
  },
  {
    code: 'UNEXPECTED_TOKEN',
    pattern: /block-seq-ind on same line/,
    say: () => 'A list begins with "- " on a line of its own; or write it as [a, b].',
  },
  {
    code: 'UNEXPECTED_TOKEN',
    pattern: /Block scalar header/,
    say: () =>
      `A value that begins with | or > is a text over several lines and begins on the next line; or ${QUOTE_IT}.`,
  },
];

/**
 * One sentence for a fault: what was found and what to do.
 *
 * @param fault from the parser; an unknown one keeps the parser's words behind a plain beginning
 */
export function syntaxSentence(fault: SyntaxFault): string {
  for (const { code, pattern, line, say } of SENTENCES) {
    if (code === fault.code && (pattern?.test(fault.message) ?? true) && (line?.test(fault.line) ?? true))
      return say(fault);
  }
  return `The text is not well-formed YAML here (${fault.message}); compare it with the lines around it.`;
}

/**
 * Why an anchor, alias, tag or directive is refused.
 *
 * @param source as it stands in the text, its mark (`&`, `*`, `!` or `%`) first
 */
export function unsafeSentence(source: string): string {
  const mark = source.charAt(0);
  const name = {
    '&': 'Anchors (&name)',
    '*': 'Aliases (*name)',
    '!': 'Tags (!name)',
    '%': 'Directives (lines that begin with %)',
  }[mark];
  const advice =
    mark === '%' ? 'take the line out' : `write the value out, or in quotes if it is a text that begins with ${mark}`;
  return `${name ?? source} are not read; ${advice}.`;
}
