/** What printers and lists need to know of a rule, without its function. */
import { OWN_RULES } from './own-rules.js';
import type { Level, Source } from './result.js';
import type { Parameter, Rule } from './rule.js';

export interface Card {
  readonly id: string;
  readonly title: string;
  readonly summary: string;
  readonly level: Exclude<Level, 'none'>;
  page(): string;
  readonly sources: readonly Source[];
  readonly caution?: string;
  readonly parameters?: Readonly<Record<string, Parameter>>;
  /** Fields of the documents it reads; absent for the engine's own checks. */
  readonly reads?: readonly string[];
}

/**
 * Cards of all rules, the engine's own included, in the order of their ids.
 *
 * @param pages Markdown pages by rule id
 * @param levelOf level set by the settings, if any
 */
export function ruleCards(
  rules: readonly Rule[],
  pages: Readonly<Record<string, string>>,
  levelOf: (ruleId: string) => Level | 'off' | undefined = () => undefined,
): Card[] {
  const level = (id: string, own: Card['level']): Card['level'] => {
    const set = levelOf(id);
    return set === undefined || set === 'off' || set === 'none' ? own : set;
  };
  const cards: Card[] = rules.map((rule) => ({
    id: rule.id,
    title: rule.title,
    summary: rule.summary,
    level: level(rule.id, rule.level),
    sources: rule.sources,
    reads: rule.reads,
    page: () => pages[rule.id] ?? `# ${rule.title}\n\n${rule.summary}\n`,
    ...(rule.caution === undefined ? {} : { caution: rule.caution }),
    ...(rule.parameters === undefined ? {} : { parameters: rule.parameters }),
  }));
  cards.push(
    ...OWN_RULES.map((own) => ({
      id: own.id,
      title: own.title,
      summary: own.summary,
      level: level(own.id, own.level),
      sources: own.sources ?? [],
      page: () => pages[own.id] ?? `# ${own.title}\n\n${own.summary}\n\n${own.help}\n`,
    })),
  );
  return cards.sort((a, b) => (a.id < b.id ? -1 : 1));
}
