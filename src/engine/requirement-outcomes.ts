/** What the engine itself says of requirements that may not be held: left to the reviewer, or open. */
import type { Bearing } from './limits-of-specification.js';
import { about, asks } from './requirement-words.js';
import type { Outcome, Source } from './result.js';
import type { Requirement } from '../model/types.js';

function sourcesOf(requirement: Requirement): readonly Source[] {
  const at = requirement.asked[0]?.at ?? requirement.at;
  return [
    { basis: requirement.basis, citation: requirement.citation, provenance: 'project document', at, requirement },
  ];
}

/** A requirement that nobody has confirmed, with what the documents give where a rule looked. */
export function notConfirmed(requirement: Requirement, ruleId: string, at: Outcome['at'], outcome?: Outcome): Outcome {
  const required = asks(requirement);
  const what = about(requirement) ?? 'in words';
  const provided = outcome?.provided;
  const where = outcome?.subject === undefined ? '' : `, ${outcome.subject}`;
  const found =
    outcome === undefined
      ? 'nothing else sets this limit, so no check measured it'
      : `provided ${provided ?? 'is not stated'}${where}`;
  return {
    kind: 'review',
    at,
    subject: `${requirement.citation}${where}`,
    required,
    ...(provided === undefined ? {} : { provided }),
    message: `Requirement not confirmed: ${required} (${requirement.citation}, ${what}); ${found} (asked by ${ruleId}).`,
    correct: 'Read the paragraph; then take "confirmed: false" out of the requirement, or take the requirement out.',
    sources: sourcesOf(requirement),
    related: [{ message: 'the requirement as proposed', at: requirement.at }],
  };
}

/** A requirement whose condition cannot be told. */
export function conditionUnknown(requirement: Requirement, state: Exclude<Bearing['state'], string>): Outcome {
  const required = asks(requirement);
  return {
    kind: 'open',
    at: state.at,
    subject: `condition of ${requirement.citation}`,
    required,
    message: `Whether ${requirement.citation} applies (${about(requirement) ?? 'in words'}, ${required}) cannot be told: ${state.because}; state "${state.missing}".`,
    missing: [state.missing],
    sources: sourcesOf(requirement),
    related: [{ message: 'the condition', at: requirement.when?.at ?? requirement.at }],
  };
}
