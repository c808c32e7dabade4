/** Requirements that no result depends on, as results of their own: a person has to look. */
import { FinishedResult, Fingerprints } from './finished-result.js';
import type { HeldRequirement } from './requirements-of-run.js';
import { about, asks } from './requirement-words.js';
import type { Outcome, Result, Source } from './result.js';
import type { RequiredSubmittal } from '../model/types.js';

type Asked = Pick<Outcome, 'at'> & {
  readonly citation: string;
  readonly what: string | undefined;
  readonly asks: string;
  readonly because: string;
};

function outcomeOf(
  { at, citation, what, asks: required, because }: Asked,
  source: Pick<Source, 'requirement'>,
): Outcome {
  return {
    kind: 'review',
    at,
    subject: `${citation} ${what ?? ''}`.trim(),
    required,
    message: `${citation}: ${[what, required].filter(Boolean).join(', ')}. ${because}`.trim(),
    sources: [{ basis: 'specification', citation, provenance: 'project document', at, ...source }],
  };
}

/**
 * One result for each requirement that nothing holds, and for each thing to be submitted that no submittal answers, at
 * its place in the specification.
 *
 * They are for the compliance matrix: a review of a single detail would drown in them.
 */
export function resultsForReviewer(held: readonly HeldRequirement[], items: readonly RequiredSubmittal[]): Result[] {
  const fingerprints = new Fingerprints();
  const requirements = held
    .filter(({ results }) => results.length === 0)
    .map(({ requirement, unheld }): Outcome => {
      const { at, citation } = requirement;
      const because = unheld ?? '';
      return outcomeOf({ at, citation, what: about(requirement), asks: asks(requirement), because }, { requirement });
    });
  const submittals = items.map(({ at, citation, item, of }): Outcome => {
    const wanted = `submit ${item.value}${of === undefined ? '' : ` (${of.value})`}`;
    return outcomeOf(
      { at, citation, what: undefined, asks: wanted, because: 'No submittal under review answers it.' },
      {},
    );
  });
  return [...submittals, ...requirements].map(
    (outcome) =>
      new FinishedResult('requirement/for-the-reviewer', outcome.at.document.id, outcome, 'none', fingerprints),
  );
}
