/** One rule in full: what it is, what it rests on, what can be set, and its page. */
import { themeFor } from '../color.js';
import { oneLine } from '../escape.js';
import { plainPage } from '../plain-page.js';
import { CAUTION, type RuleCard } from '../report.js';
import { sourceText } from '../source-text.js';
import { padTo, wrap } from '../text-width.js';

const LABEL_CELLS = 12;

export interface ExplainOptions {
  readonly color: boolean;
  /** Width of the stream; 80 when not known. */
  readonly columns?: number;
}

/** @returns plain text, ending with a line break */
export function printExplanation(rule: RuleCard, options: ExplainOptions): string {
  const cells = Math.max(40, Math.min(100, options.columns ?? 80));
  const theme = themeFor(options.color);
  const labelled = (label: string, text: string): string[] =>
    wrap(oneLine(text), cells - LABEL_CELLS).map(
      (line, index) => theme.quiet(padTo(index === 0 ? label : '', LABEL_CELLS)) + line,
    );
  const head = [
    ...wrap(oneLine(`${rule.id}  ${rule.title}`), cells).map((line) => theme.title(line)),
    ...wrap(oneLine(rule.summary), cells),
    '',
    ...labelled('level', rule.level),
    ...rule.sources.flatMap((source, index) => labelled(index === 0 ? 'sources' : '', sourceText(source))),
    ...Object.entries(rule.parameters ?? {}).flatMap(([name, parameter], index) =>
      labelled(
        index === 0 ? 'parameters' : '',
        `${name}: ${parameter.meaning} Default ${String(parameter.default)}, ${sourceText(parameter.source)}.`,
      ),
    ),
    ...(rule.caution === undefined ? [] : labelled('caution', rule.caution)),
  ];
  return `${head.join('\n')}\n\n${plainPage(withoutTitle(rule), cells)}\n${wrap(CAUTION, cells).join('\n')}\n`;
}

/** The page without its first heading when that only repeats the title printed above it. */
function withoutTitle(rule: RuleCard): string {
  const [first = '', ...rest] = rule.page().split('\n');
  return first.replace(/^#\s+/, '').trim() === rule.title ? rest.join('\n').trimStart() : [first, ...rest].join('\n');
}
