/** Requirements that no result depends on, as results of their own: a person has to look. */
import { FinishedResult, Fingerprints } from './finished-result.js';
import type { HeldRequirement } from './requirements-of-run.js';
import { about, asks } from './requirement-words.js';
import type { Outcome, Result } from './result.js';

/**
 * One result for each requirement that nothing holds, at its place in the specification.
 *
 * They are for the compliance matrix: a review of a single detail would drown in them.
 */
export function resultsForReviewer(held: readonly HeldRequirement[]): Result[] {
  const fingerprints = new Fingerprints();
  return held.flatMap(({ requirement, results, unheld }) => {
    if (results.length > 0) return [];
    const outcome: Outcome = {
      kind: 'review',
      at: requirement.at,
      subject: `${requirement.citation} ${about(requirement) ?? ''}`.trim(),
      required: asks(requirement),
      message:
        `${requirement.citation}: ${[about(requirement), asks(requirement)].filter(Boolean).join(', ')}. ${unheld ?? ''}`.trim(),
      sources: [
        {
          basis: 'specification',
          citation: requirement.citation,
          provenance: 'project document',
          at: requirement.at,
          requirement,
        },
      ],
    };
    const { document } = requirement.at;
    return [new FinishedResult('requirement/for-the-reviewer', document.id, outcome, 'none', fingerprints)];
  });
}
