/**
 * A key for a result that survives moved lines, renumbered entries and renamed files: it is made of ids, not of
 * positions.
 */
import { createHash } from 'node:crypto';
import type { Outcome } from './result.js';
import type { Locus } from '../reading/types.js';

/** The path of a locus with list positions replaced by the `id` of the entry where it has one. */
export function pathOfIds(at: Locus): string {
  let value: unknown = at.document.data;
  const steps: string[] = [];
  for (const step of at.path) {
    value = (value as Record<string | number, unknown> | undefined)?.[step];
    const id =
      typeof step === 'number' && typeof value === 'object' && value !== null
        ? (value as Record<string, unknown>)['id']
        : undefined;
    steps.push(typeof id === 'string' || typeof id === 'number' ? `[${id}]` : String(step));
  }
  return steps.join('.');
}

/** Ids met on the way to a locus, for deviations that name a work, an opening or a layer. */
export function idsOnPath(at: Locus): string[] {
  return [...pathOfIds(at).matchAll(/\[([^\]]*)\]/g)].map((m) => m[1] as string);
}

/**
 * @param occurrence how many results with the same rule, document, place and subject came before this one
 */
export function fingerprintOf(ruleId: string, documentId: string, outcome: Outcome, occurrence: number): string {
  const value = outcome.at.document.kind === 'detail' ? '' : outcome.at.document.id;
  return createHash('sha256')
    .update(
      [
        ruleId,
        documentId,
        value,
        pathOfIds(outcome.at),
        outcome.subject ?? '',
        outcome.kind === 'fail' ? (outcome.provided ?? '') : '',
        occurrence,
      ].join('\u0000'),
    )
    .digest('hex')
    .slice(0, 32);
}
