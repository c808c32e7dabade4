/** The list of rules: id, level and what must be true on the wall. */
import { oneLine } from '../escape.js';
import type { RuleCard } from '../report.js';
import { padTo, textWidth, wrap } from '../text-width.js';

const LEVEL_CELLS = 'warning'.length;
/** A summary squeezed into less than this is set on lines of its own. */
const LEAST_SUMMARY_CELLS = 30;

/**
 * @param rules in the order to print
 * @param columns width of the stream; 80 when not known
 * @returns lines, each ended by a line break; a sentence when there are no rules
 */
export function printRulesList(rules: readonly Pick<RuleCard, 'id' | 'level' | 'summary'>[], columns = 80): string {
  if (rules.length === 0) return 'No rules are loaded.\n';
  const cells = Math.max(40, Math.min(120, columns));
  const idCells = Math.max(...rules.map((rule) => textWidth(oneLine(rule.id))));
  const before = idCells + 2 + LEVEL_CELLS + 2;
  const beside = cells - before >= LEAST_SUMMARY_CELLS;
  const lines = rules.flatMap((rule) => {
    const head = `${padTo(oneLine(rule.id), idCells)}  ${padTo(rule.level, LEVEL_CELLS)}`;
    const indent = ' '.repeat(beside ? before : 4);
    const summary = wrap(oneLine(rule.summary), cells - indent.length);
    return beside
      ? summary.map((line, index) => (index === 0 ? `${head}  ` : indent) + line)
      : [head.trimEnd(), ...summary.map((line) => indent + line)];
  });
  return `${lines.join('\n')}\n`;
}
