/** Rules as SARIF reporting descriptors. */
import type { ReportingDescriptor } from 'sarif';
import { plainPage } from './plain-page.js';
import type { RuleCard } from './report.js';
import type { Clauses } from './sarif-clauses.js';

/** `lap/reverse-lap` as `LapReverseLap`. */
export function pascalCase(ruleId: string): string {
  return ruleId
    .split(/[^A-Za-z0-9]+/)
    .map((part) => part.slice(0, 1).toUpperCase() + part.slice(1))
    .join('');
}

/**
 * Texts of a descriptor take no arguments, so braces stay single here: the examples of a page are full of them.
 *
 * @param rule its page is read here, once
 * @param clauses leaves out the relationships when absent
 */
export function ruleDescriptor(rule: RuleCard, clauses?: Clauses): ReportingDescriptor {
  const page = rule.page();
  const plain = plainPage(page, Infinity).trim();
  const described = rule.caution === undefined ? rule.summary : `${rule.summary} Caution: ${rule.caution}`;
  const targets = clauses?.references(rule.sources) ?? [];
  return {
    id: rule.id,
    name: pascalCase(rule.id),
    shortDescription: { text: rule.title },
    fullDescription: { text: described },
    help: plain === '' ? { text: described } : { text: plain, markdown: page },
    defaultConfiguration: { level: rule.level },
    ...(targets.length > 0 ? { relationships: targets.map((target) => ({ target, kinds: ['relevant'] })) } : {}),
    properties: { tags: [...new Set(rule.sources.map((source) => source.citation))] },
  };
}

/** A result whose rule has no card (a document that could not be read) still needs a descriptor to point at. */
export function descriptorWithoutCard(ruleId: string): ReportingDescriptor {
  const text = `Results of ${ruleId}; the message of each says what was found, what is expected and what to do.`;
  return {
    id: ruleId,
    name: pascalCase(ruleId),
    shortDescription: { text: ruleId },
    fullDescription: { text },
    help: { text },
    properties: { tags: [] },
  };
}
