/** What the section asks to be submitted, held against what the submittal contains. */
import type { Outcome } from '../result.js';
import { HABIT } from './rules.js';
import { sourceOfItem, type SubmittalCheck, type SubmittalSubject } from './subject.js';
import { FAMILIES, type RequiredSubmittal, type SubmittalItem } from '../../model/types.js';
import type { SubmittedItem } from '../../model/submittal.js';

/** Built or written after the drawings are reviewed: that they are not there yet is no breach. */
const LATER: ReadonlySet<SubmittalItem> = new Set<SubmittalItem>(['mock-up', 'warranty', 'closeout']);

/** Designations of standards: `ASTM E2178`, `AAMA 714`, `NFPA 285`. */
const STANDARD =
  /\b(?:AAMA|ANSI|ASHRAE|ASTM|CAN|CSA|EN|FGIA|ISO|NFPA|UL|ULC)(?:\/[A-Z]+)*[ -]?[A-Z]{0,3}[ -]?\d+(?:\.\d+)*\b/g;

/** The same designation however its spaces and dashes are written. */
const plain = (designation: string): string => designation.replace(/[ -]/g, '').toUpperCase();
const standardsIn = (text: string): string[] => text.match(STANDARD) ?? [];

/** `"Product data LF-1"`, with the submittal it was sent with. */
const named = ({ title }: SubmittedItem): string => `"${title.value}"`;

/** Of these there is one. */
const SINGLE: ReadonlySet<SubmittalItem> = new Set<SubmittalItem>([
  'mock-up',
  'field quality plan',
  'compatibility statement',
  'warranty',
  'schedule',
]);

/** `test reports (each membrane)`, `a field quality plan`. */
function wanted({ item, of }: RequiredSubmittal): string {
  const what = SINGLE.has(item.value) ? `a ${item.value}` : item.value;
  return of === undefined ? what : `${what} (${of.value})`;
}

/** Products that a requirement is about, when it names one by its id or its family; else nobody can tell from here. */
function productsAsked({ of }: RequiredSubmittal, { products }: SubmittalSubject): readonly string[] | undefined {
  if (of === undefined) return undefined;
  if (products.has(of.value)) return [of.value];
  const family = FAMILIES.find((f) => f === of.value.toLowerCase());
  if (family === undefined) return undefined;
  return [...products.values()].filter((p) => p.family === family).map((p) => p.id);
}

interface Found {
  readonly kind: Outcome['kind'];
  readonly says: string;
  readonly correct?: string;
  readonly missing?: readonly string[];
}

/** Whether it is about the product asked for. */
function aboutProduct(
  asked: RequiredSubmittal,
  sent: readonly SubmittedItem[],
  subject: SubmittalSubject,
): Found | undefined {
  const products = productsAsked(asked, subject);
  if (products === undefined || products.length === 0) return undefined;
  const stated = sent.flatMap((s) => s.of.map((o) => o.value));
  if (stated.some((id) => products.includes(id))) return undefined;
  const list = sent.map(named).join(', ');
  if (stated.length === 0)
    return {
      kind: 'open',
      says: `${list} does not say which product it is about; ${asked.citation} asks for ${wanted(asked)}: state "of".`,
      missing: sent.map((s) => `contains[${s.index}].of`),
    };
  return {
    kind: 'fail',
    says: `${list} is about ${stated.join(', ')}; ${asked.citation} asks for ${wanted(asked)}.`,
    correct: `Send in ${asked.item.value} for ${products.join(' or ')}.`,
  };
}

/** Whether it reports on the methods that the paragraph names. */
function byMethod(asked: RequiredSubmittal, sent: readonly SubmittedItem[]): Found | undefined {
  const methods = standardsIn(`${asked.of?.value ?? ''} ${asked.text?.value ?? ''}`);
  if (methods.length === 0) return undefined;
  const stated = sent.flatMap((s) => [...s.methods.map((m) => m.value), ...standardsIn(s.title.value)]);
  const told = new Set(stated.flatMap((m) => [m, ...standardsIn(m)]).map(plain));
  const lacking = methods.filter((m) => !told.has(plain(m)));
  if (lacking.length === 0) return undefined;
  const list = sent.map(named).join(', ');
  if (stated.length === 0)
    return {
      kind: 'open',
      says: `${list} names no method; ${asked.citation} asks for ${lacking.join(', ')}: state "methods".`,
      missing: sent.map((s) => `contains[${s.index}].methods`),
    };
  return {
    kind: 'fail',
    says: `${list} reports on ${stated.join(', ')}; ${asked.citation} asks for ${lacking.join(', ')}.`,
    correct: `Send in ${asked.item.value} by ${lacking.join(', ')}.`,
  };
}

/** Things sent with another submittal: seen there when it was read, else left to whoever keeps the log. */
function elsewhere(sent: readonly SubmittedItem[], subject: SubmittalSubject): Found | undefined {
  // What comes with this submittal answers by itself.
  if (sent.some((s) => s.sentWith === undefined)) return undefined;
  for (const s of sent) {
    const other = subject.others.get(s.sentWith?.value ?? '');
    if (other === undefined) continue;
    if (other.contains.some((c) => c.item.value === s.item.value)) return undefined;
    return {
      kind: 'fail',
      says: `${named(s)} is said to be sent with ${other.number.value}, which contains no ${s.item.value}.`,
      correct: 'Send it in, or name the submittal that contains it.',
    };
  }
  return {
    kind: 'review',
    says: `${sent.map((s) => `${named(s)} is said to be sent with ${s.sentWith?.value ?? ''}`).join('; ')}, which is not part of this review: see the submittal log.`,
  };
}

function missing(asked: RequiredSubmittal, subject: SubmittalSubject): Found {
  const { contains, section } = subject.submittal;
  const paragraph = asked.paragraph?.value ?? '';
  const other = contains.find((c) => c.answers.some((a) => a.value === paragraph));
  if (other !== undefined)
    return {
      kind: 'fail',
      says: `${named(other)} answers ${paragraph} as ${other.item.value}; ${asked.citation} asks for ${wanted(asked)}.`,
      correct: `Send in ${asked.item.value}, or correct the "item" of the entry.`,
    };
  const alike = contains.find((c) => c.item.value === asked.item.value);
  if (alike !== undefined)
    return {
      kind: 'fail',
      says: `${asked.citation} asks for ${wanted(asked)}; ${named(alike)} answers ${alike.answers.map((a) => a.value).join(', ')} and not ${paragraph}.`,
      correct: `Send it in, or add "${paragraph}" to "answers" when the entry covers it.`,
    };
  if (LATER.has(asked.item.value))
    return {
      kind: 'open',
      says: `${asked.citation} asks for ${wanted(asked)}, and the submittal contains none. It may come later; say when, or with which submittal.`,
      missing: ['contains'],
    };
  return {
    kind: 'fail',
    says: `${asked.citation} asks for ${wanted(asked)}, and the submittal contains none.`,
    correct: `Send it in, or name the other submittal of section ${section.value} that it was sent with. List it under "contains" with "answers: ['${paragraph}']", and the other submittal under "sentWith".`,
  };
}

/** Each required item is there, for the right product and by the right method. */
export const requiredItems: SubmittalCheck = {
  ruleId: 'submittal/required-items',
  *review(subject) {
    const { submittal, required } = subject;
    for (const asked of required) {
      const paragraph = asked.paragraph?.value;
      const sent = submittal.contains.filter(
        (c) =>
          c.item.value === asked.item.value &&
          // An entry that names no paragraph answers whatever asks for its kind.
          (c.answers.length === 0 || c.answers.some((a) => a.value === paragraph)),
      );
      const found: Found =
        sent.length === 0
          ? missing(asked, subject)
          : (elsewhere(sent, subject) ??
            aboutProduct(asked, sent, subject) ??
            byMethod(asked, sent) ?? {
              kind: 'pass',
              says: `${sent.map(named).join(', ')} answers ${asked.citation}, ${wanted(asked)}.`,
            });
      const base = {
        at: sent[0]?.at ?? { document: submittal.document, path: ['contains'] },
        subject: `${asked.item.value}, ${asked.citation}`,
        required: wanted(asked),
        provided: sent.length === 0 ? 'none' : sent.map((s) => s.title.value).join(', '),
        sources: [sourceOfItem(asked)],
        related: [{ message: 'asked for here', at: asked.at }],
      };
      if (!asked.confirmed)
        yield {
          ...base,
          kind: 'review',
          message: `Requirement not confirmed: ${found.says}`,
        };
      else
        yield {
          ...base,
          kind: found.kind,
          message: found.says,
          ...(found.correct === undefined ? {} : { correct: found.correct }),
          ...(found.missing === undefined ? {} : { missing: found.missing }),
        };
    }
  },
};

/** What nothing asks for is told: it is reviewed by nobody, or its paragraph is missing from the list. */
export const unaskedItems: SubmittalCheck = {
  ruleId: 'submittal/unasked-items',
  *review({ submittal, required }) {
    if (required.length === 0) return;
    for (const sent of submittal.contains) {
      const asked = required.some(
        (r) => r.item.value === sent.item.value || sent.answers.some((a) => a.value === r.paragraph?.value),
      );
      const base = { at: sent.item.at, subject: sent.title.value, sources: HABIT };
      const unknown = sent.answers.find((a) => !required.some((r) => r.paragraph?.value === a.value));
      if (!asked)
        yield {
          ...base,
          kind: 'informational',
          message: `Section ${submittal.section.value} asks for no ${sent.item.value}: ${named(sent)} is sent in without being asked for.`,
        };
      else if (unknown !== undefined)
        yield {
          ...base,
          at: unknown.at,
          kind: 'informational',
          message: `${named(sent)} answers ${unknown.value}, and no submittal is asked for there in section ${submittal.section.value}.`,
        };
      else yield { ...base, kind: 'pass', message: `${named(sent)} is asked for.` };
    }
  },
};
