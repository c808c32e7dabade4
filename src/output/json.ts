/**
 * The review as JSON, for programs of the project's own.
 *
 * ```text
 * { format: "lapwright-review/1", toolVersion, suggestedAction (or null), because, caution,
 *   counts: { errors, warnings, notes, open, review, accepted, passed, notApplicable, informational },
 *   failOn, exitCode,
 *   details: [ { id, title?, file } ],
 *   submittals?: [ { number, section, sectionTitle?, title, revision, file, date?, reviewedOn, from?, to?, previous?, project?,
 *     details: [ id ], contains: [ { item, title, answers, of, date?, sentWith? } ],
 *     declared: [ { type, id?, departsFrom, details, reason?, effect?, status, file, line, column } ] } ],
 *   rules: [ { id, title, summary, level, sources, caution? } ],
 *   notifications: [ { level, message, rule?, detail?, file? } ],
 *   results: [ {
 *     file, line, column, endLine, endColumn,   // from 1, columns in UTF-16 code units, end exclusive
 *     detail, rule, kind, level, message, subject?, required?, provided?, correct?,
 *     sources: [ { basis, citation, provenance, url?, file?, line?, column? } ],   // the governing one first
 *     related?: [ { message, file, line, column } ],
 *     flow?: [ { message, file, line, column, essential } ],
 *     missing?: [ field ], notes?: [ sentence ], accepted?: { justification, by?, until?, file, line, column }, fingerprint } ] }
 * ```
 * Keys always stand in this order; what is not known is left out, never null. One result stands on one line.
 */
import type { Result, Source } from '../engine/result.js';
import type { ReviewedSubmittal } from '../engine/submittal/facts.js';
import type { Locus } from '../reading/types.js';
import { safeJson } from './escape.js';
import { placeOfLocus, placeOfResult } from './place.js';
import { CAUTION, countResults, suggestedAction, type Review } from './report.js';

/** The whole text; use `jsonChunks` for a library of thousands. */
export function printJson(review: Review): string {
  return [...jsonChunks(review)].join('');
}

/** The same text in pieces, one for each result. */
export function* jsonChunks(review: Review): Generator<string> {
  const { action, because } = suggestedAction(review);
  const head = {
    format: 'lapwright-review/1',
    toolVersion: review.toolVersion,
    suggestedAction: action ?? null,
    because,
    caution: CAUTION,
    counts: countResults(review.results),
    failOn: review.failOn,
    exitCode: review.exitCode,
    details: review.details.map(({ id, title, uri }) => ({ id, title, file: uri })),
    ...(review.submittals === undefined ? {} : { submittals: review.submittals.map(submittalObject) }),
    rules: review.rules.map(({ id, title, summary, level, sources, caution }) => ({
      id,
      title,
      summary,
      level,
      sources: sources.map(sourceObject),
      caution,
    })),
    notifications: review.notifications.map(({ level, message, ruleId, documentId, uri }) => ({
      level,
      message,
      rule: ruleId,
      detail: documentId,
      file: uri,
    })),
  };
  for (const [index, [key, value]] of Object.entries(head).entries()) {
    yield `${index === 0 ? '{' : ','}\n${safeJson(key)}:${safeJson(value)}`;
  }
  yield ',\n"results":[';
  let first = true;
  for (const result of review.results) {
    yield `${first ? '' : ','}\n${safeJson(resultObject(result))}`;
    first = false;
  }
  yield '\n]}\n';
}

function submittalObject({ uri, projectTitle, declared, ...facts }: ReviewedSubmittal): object {
  return {
    ...facts,
    file: uri,
    project: projectTitle,
    declared: declared.map(({ at, ...item }) => ({ ...item, ...spot(at) })),
  };
}

function resultObject(result: Result): object {
  const place = placeOfResult(result);
  const { suppression } = result;
  return {
    file: place.uri,
    line: place.line,
    column: place.column,
    endLine: place.endLine,
    endColumn: place.endColumn,
    detail: result.documentId,
    rule: result.ruleId,
    kind: result.kind,
    level: result.kind === 'fail' ? result.level : 'none',
    message: result.message,
    subject: result.subject,
    required: result.required,
    provided: result.provided,
    correct: result.correct,
    sources: (result.sources ?? []).map(sourceObject),
    related: result.related?.map(({ message, at }) => ({ message, ...spot(at) })),
    flow: result.flow?.map(({ message, at, essential }) => ({ message, ...spot(at), essential: essential === true })),
    missing: result.missing,
    notes: result.notes,
    accepted: suppression && {
      justification: suppression.justification,
      by: suppression.acceptedBy,
      until: suppression.until,
      ...spot(suppression.at),
    },
    fingerprint: result.fingerprint,
  };
}

function sourceObject({ basis, citation, provenance, url, at }: Source): object {
  return { basis, citation, provenance, url, ...(at === undefined ? {} : spot(at)) };
}

function spot(at: Locus): { file: string; line: number; column: number } {
  const { uri, line, column } = placeOfLocus(at);
  return { file: uri, line, column };
}
