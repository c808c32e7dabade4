/** What could not be checked, worded as requests for information: what is missing, why, who answers. */
import type { ListItem } from 'mdast';
import type { Result } from '../../engine/result.js';
import { missingText, type DetailResults } from '../grouping.js';
import { item, joint, strong, words } from '../markdown-parts.js';
import type { Review, RuleCard } from '../report.js';
import { fieldOfAny } from '../../model/named-field.js';
import { inTradeWords } from './trade-words.js';

interface Question {
  readonly first: Result;
  readonly role: string;
  readonly missing: string;
  readonly places: { readonly detailId: string; readonly result: Result }[];
}

/** The roles of a submittal; of several, or of one that does not say, the usual ones. */
interface Roles {
  readonly sender: string;
  readonly reviewer: string;
}

function rolesOf({ submittals = [] }: Review): Roles {
  const [only, ...more] = submittals;
  return {
    sender: (more.length === 0 ? only?.from : undefined) ?? 'contractor',
    reviewer: (more.length === 0 ? only?.to : undefined) ?? 'architect of record',
  };
}

/** Place, code and specification are the reviewer's to state; what is built and sent in, the sender's. */
function roleFor(result: Result, { sender, reviewer }: Roles): string {
  const [field = ''] = result.missing ?? [];
  const { kind } = result.at.document;
  const isOfContract = field.startsWith('project.') || kind === 'project' || kind === 'specification';
  return isOfContract ? reviewer : sender;
}

function questionsOf(groups: readonly DetailResults[], roles: Roles): Question[] {
  const questions = new Map<string, Question>();
  for (const { detail, open } of groups) {
    for (const result of open) {
      const role = roleFor(result, roles);
      // The same field of two layers or two steps is one question about two places.
      const missing = fieldOfAny(missingText(result));
      const key = `${result.ruleId}\n${role}\n${missing}`;
      const question = questions.get(key) ?? { first: result, role, missing, places: [] };
      questions.set(key, question);
      question.places.push({ detailId: detail.id, result });
    }
  }
  return [...questions.values()];
}

/** First sentence of what the page says of why it matters; else what must be true. */
function whyOf(card: RuleCard | undefined): string | undefined {
  if (card === undefined) return undefined;
  const [, section = ''] = /^## Why it matters\n+([^]*?)(?=\n#|\n\n|$(?![^]))/m.exec(card.page()) ?? [];
  const text = section.replace(/\s+/g, ' ').trim();
  const [sentence] = /^.*?[.!?](?=\s|$)/.exec(text) ?? [];
  return sentence ?? card.summary;
}

/** The questions, in the order of the documents. */
export function questionItems(groups: readonly DetailResults[], review: Review): ListItem[] {
  const cards = new Map(review.rules.map((card) => [card.id, card]));
  return questionsOf(groups, rolesOf(review)).map(({ first, role, places }) => {
    const why = whyOf(cards.get(first.ruleId));
    const details = [...new Set(places.map((p) => p.detailId))].join(', ');
    return item(
      strong(`For the ${role.replace(/^the\s+/i, '')}`),
      joint(', on '),
      words(details),
      joint(': '),
      words(inTradeWords(first.message, first)),
      ...(why === undefined ? [] : [joint(' Why it matters: '), words(why)]),
    );
  });
}
