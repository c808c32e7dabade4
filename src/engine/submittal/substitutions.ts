/** Substitutions: whether they are accepted, and whether the details use what was accepted. */
import { acceptedUnder, mayNot, rolesText } from '../acceptance.js';
import { isExpired } from '../deviations.js';
import type { Outcome } from '../result.js';
import { standing } from './declared.js';
import type { DeclaredItem } from './facts.js';
import { SUBSTITUTIONS } from './rules.js';
import type { SubmittalCheck, SubmittalSubject } from './subject.js';
import type { Substitution } from '../../model/submittal.js';
import { productsUsed } from '../../model/products-used.js';
import type { Locus } from '../../reading/types.js';

const nameOf = ({ id, specified, proposed }: Substitution): string =>
  id === undefined ? `the substitution of "${specified.value}" by "${proposed.value}"` : `substitution ${id}`;

interface Use {
  readonly detail: string;
  readonly at: Locus;
}

/** Where the details use a product, by its id or its name. */
function usesOf(word: string, { details }: SubmittalSubject): Use[] {
  return details.flatMap(({ detail }) => {
    if (detail === undefined) return [];
    const use = productsUsed(detail, () => true).find(({ product }) => product.id === word || product.name === word);
    return use === undefined ? [] : [{ detail: detail.id, at: use.at }];
  });
}

const listed = (uses: readonly Use[]): string => uses.map((u) => u.detail).join(', ');
/** `N-1 uses`, `N-1, N-2 use`. */
const use = (uses: readonly Use[], still = ''): string =>
  `${listed(uses)} ${still}${uses.length === 1 ? 'uses' : 'use'}`;
const places = (uses: readonly Use[], product: string): NonNullable<Outcome['related']> =>
  uses.map(({ detail, at }) => ({ message: `${detail} uses "${product}"`, at }));
const isInForce = (s: Substitution, { acceptingRoles, today }: SubmittalSubject): boolean =>
  acceptedUnder(s, acceptingRoles) !== undefined && !isExpired(s, today);

/** A proposed product in the details needs an acceptance that is in force. */
export const substitutionAccepted: SubmittalCheck = {
  ruleId: 'substitution/accepted',
  *review(subject) {
    for (const s of subject.submittal.substitutions) {
      const { specified, proposed, acceptedBy, until } = s;
      const uses = usesOf(proposed.value, subject);
      const base = {
        subject: nameOf(s),
        sources: SUBSTITUTIONS,
        required: 'acceptance in force',
        provided: standing(s, subject),
        related: places(uses, proposed.value),
      };
      if (isInForce(s, subject))
        yield {
          ...base,
          kind: 'pass',
          at: acceptedBy?.at ?? s.at,
          message: `${nameOf(s)}, "${proposed.value}" for "${specified.value}", is ${standing(s, subject)}.`,
        };
      else if (acceptedBy !== undefined && acceptedUnder(s, subject.acceptingRoles) === undefined)
        yield {
          ...base,
          kind: 'fail',
          at: acceptedBy.at,
          message: `${nameOf(s)} is stated as accepted by ${acceptedBy.value}, ${mayNot(subject.acceptingRoles)}.`,
          correct: `Have it accepted by ${rolesText(subject.acceptingRoles)}, or use "${specified.value}".`,
        };
      else if (acceptedBy !== undefined)
        yield {
          ...base,
          kind: 'fail',
          at: until?.at ?? s.at,
          message: `${nameOf(s)} ended on ${until?.value ?? ''}${uses.length === 0 ? '.' : `, and ${use(uses, 'still ')} "${proposed.value}".`}`,
          correct: `Have it accepted anew with a later date, or use "${specified.value}".`,
        };
      else
        yield {
          ...base,
          kind: 'fail',
          at: s.at,
          message:
            uses.length === 0
              ? `${nameOf(s)} is requested and nobody has accepted it; "${specified.value}" is what the contract asks for.`
              : `${use(uses)} "${proposed.value}" in place of "${specified.value}", and nobody has accepted ${nameOf(s)}.`,
          correct: `Name the role that accepted it under "acceptedBy", or use "${specified.value}".`,
        };
    }
  },
};

/** The details use one of the two, and the one that is accepted. */
export const substitutionInDetails: SubmittalCheck = {
  ruleId: 'substitution/in-details',
  *review(subject) {
    for (const s of subject.submittal.substitutions) {
      const { specified, proposed } = s;
      const [old, own] = [usesOf(specified.value, subject), usesOf(proposed.value, subject)];
      const related = [...places(own, proposed.value), ...places(old, specified.value)];
      const base = { at: s.proposed.at, subject: nameOf(s), sources: SUBSTITUTIONS, related };
      if (own.length > 0 && old.length > 0)
        yield {
          ...base,
          kind: 'fail',
          required: `"${proposed.value}" or "${specified.value}"`,
          provided: 'both',
          message: `${nameOf(s)} is not carried through: ${use(own)} "${proposed.value}" and ${use(old)} "${specified.value}".`,
          correct: `Use one of the two in every detail, or say under "reason" where each belongs and list the details of the other apart.`,
        };
      else if (own.length === 0 && old.length > 0 && isInForce(s, subject))
        yield {
          ...base,
          kind: 'fail',
          required: `"${proposed.value}"`,
          provided: `"${specified.value}"`,
          message: `${nameOf(s)} is accepted, and ${use(old, 'still ')} "${specified.value}".`,
          correct: `Use "${proposed.value}" in the details, or take the substitution out.`,
        };
      else if (own.length === 0 && old.length === 0)
        yield {
          ...base,
          kind: 'fail',
          level: 'note',
          required: `"${proposed.value}" or "${specified.value}"`,
          provided: 'neither',
          message: `No detail of the submittal uses "${proposed.value}" or "${specified.value}", so ${nameOf(s)} changes nothing here.`,
          correct: 'Correct the ids, add the detail it is about, or send the request with the submittal it belongs to.',
        };
      else {
        const used = own.length > 0 ? proposed.value : specified.value;
        yield {
          ...base,
          kind: 'pass',
          provided: `"${used}"`,
          message: `The details use "${used}" alone (${listed(own.length > 0 ? own : old)}).`,
        };
      }
    }
  },
};

/** The substitutions, for the letter. */
export function substitutionItems(subject: SubmittalSubject): DeclaredItem[] {
  return subject.submittal.substitutions.map((s): DeclaredItem => {
    const uses = usesOf(s.proposed.value, subject);
    const paragraph = s.paragraph === undefined ? '' : ` (${s.paragraph.value})`;
    const contract = [
      ...(s.cost === undefined ? [] : [`Cost: ${s.cost.value}.`]),
      ...(s.time === undefined ? [] : [`Time: ${s.time.value}.`]),
    ].join(' ');
    const effect = [s.effect?.value, contract].filter((part) => part !== undefined && part !== '').join(' ');
    return {
      type: 'substitution',
      ...(s.id === undefined ? {} : { id: s.id }),
      departsFrom: `${s.specified.value} to ${s.proposed.value}${paragraph}`,
      details: uses.map((u) => u.detail),
      reason: s.reason.value,
      ...(effect === '' ? {} : { effect }),
      status: standing(s, subject).replace('declared', 'requested'),
      at: s.at,
    };
  });
}
