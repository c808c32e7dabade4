/** `lapwright rules` and `lapwright explain RULE` */
import { oneOf, readArguments, UsageError, valuesOf, type Token } from './arguments.js';
import { ruleCards, type Card } from '../engine/cards.js';
import { joinRules, loadPack } from '../engine/packs.js';
import { nearest } from '../model/nearest.js';
import { wantsColor } from '../output/color.js';
import { BUILT_IN_RULES } from '../../generated/rules.js';
import { say } from './say.js';

async function cardsOf(given: readonly Token[]): Promise<Card[]> {
  const packs = await Promise.all(valuesOf(given, 'pack').map((name) => loadPack(name, process.cwd())));
  const { rules, notifications } = joinRules(BUILT_IN_RULES, packs);
  for (const n of notifications) say(`${n.level}: ${n.message}`);
  const { PAGES } = await import('../../generated/pages.js');
  return ruleCards(rules, Object.assign({}, PAGES, ...packs.map((p) => p.pages)) as Record<string, string>);
}

/** Lists all rules. @returns the exit status */
export async function rulesCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, { pack: { type: 'string', multiple: true }, format: { type: 'string' } });
  if (rest.length > 0)
    throw new UsageError(
      `The command "rules" takes no further words ("${rest.join(' ')}"); to read one rule: lapwright explain ${rest[0] ?? ''}`,
    );
  const format = oneOf(given, 'format', ['terminal', 'json'], 'terminal');
  const cards = await cardsOf(given);
  if (format === 'json') {
    process.stdout.write(
      `${JSON.stringify(
        cards.map(({ id, title, level, summary, sources, parameters }) => ({
          id,
          title,
          level,
          summary,
          sources: sources.map(({ basis, citation, provenance, url }) => ({ basis, citation, provenance, url })),
          parameters,
        })),
        null,
        2,
      )}\n`,
    );
    return 0;
  }
  const { printRulesList } = await import('../output/tables/rules-list.js');
  process.stdout.write(printRulesList(cards, process.stdout.columns > 0 ? process.stdout.columns : 100));
  return 0;
}

/** Prints the page of one rule. @returns the exit status */
export async function explainCommand(argv: readonly string[]): Promise<number> {
  const { given, rest } = readArguments(argv, {
    pack: { type: 'string', multiple: true },
    markdown: { type: 'boolean' },
  });
  const [id, ...more] = rest;
  if (id === undefined || more.length > 0)
    throw new UsageError('Name one rule: lapwright explain lap/reverse-lap. The command "lapwright rules" lists them.');
  const cards = await cardsOf(given);
  const card = cards.find((c) => c.id === id) ?? cards.find((c) => c.id.endsWith(`/${id}`));
  if (card === undefined) {
    const close = nearest(id, [...cards.map((c) => c.id), ...cards.map((c) => c.id.split('/')[1] ?? '')]);
    throw new UsageError(
      `No rule is called "${id}"; ${close === undefined ? 'the command "lapwright rules" lists them.' : `did you mean "${close}"?`}`,
    );
  }
  if (given.some((t) => t.name === 'markdown')) process.stdout.write(card.page());
  else {
    const { printExplanation } = await import('../output/tables/explain.js');
    process.stdout.write(
      printExplanation(card, {
        color: wantsColor({ env: process.env, isTTY: process.stdout.isTTY }),
        ...(process.stdout.columns > 0 ? { columns: process.stdout.columns } : {}),
      }),
    );
  }
  return 0;
}
