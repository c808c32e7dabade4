/**
 * The comparison as JSON, for programs of the project's own.
 *
 * ```text
 * { format: "lapwright-comparison/1", toolVersion, before: name, after: name, caution,
 *   suggestedAction (or null), exitCode,
 *   counts: { "newly broken", "new", "answered, and fails", "no longer accepted", "newly open", "still open",
 *     "corrected", "answered", "accepted", "no longer checked", "unchanged" },
 *   requirements: [ { citation, basis, provenance, status, before, after, details } ],
 *   changes (or null): [ { kind, document: { kind, id }, path, before?: { text, file, line, column }, after?, effect } ],
 *   results: [ { baselineState, progress, detail, rule, subject, before?: side, after?: side,
 *     differences: [ { what, before?, after? } ], changes: [ { change: index into changes, how } ] } ] }
 * side: { kind, level, message, required?, provided?, correct?, missing?, sources, accepted?, file, line, column }
 * ```
 * Keys always stand in this order; what is not known is left out. One result stands on one line.
 */
import type { Change, Pair, Told, Written } from '../../compare/types.js';
import { safeJson } from '../escape.js';
import { CAUTION } from '../report.js';
import type { ComparisonReport } from './report.js';

/** The comparison as one JSON object, whose fields the head of this file tells. */
export function printComparisonJson({ toolVersion, comparison, suggested, exitCode }: ComparisonReport): string {
  const { before, after, counts, requirements, changes, withoutEffect, pairs } = comparison;
  const idle = new Set(withoutEffect);
  const numbers = new Map((changes ?? []).map((change, i) => [change, i]));
  const head = {
    format: 'lapwright-comparison/1',
    toolVersion,
    before: before.name,
    after: after.name,
    caution: CAUTION,
    suggestedAction: suggested?.action ?? null,
    exitCode,
    counts,
    requirements: requirements.map(({ source, status, before: was, after: is, details }) => ({
      citation: source.citation,
      basis: source.basis,
      provenance: source.provenance,
      status,
      before: was,
      after: is,
      details,
    })),
  };
  const lines = (items: readonly object[]): string => items.map((item) => `\n${safeJson(item)}`).join(',');
  const entries = Object.entries(head).map(([key, value]) => `\n${safeJson(key)}:${safeJson(value)}`);
  const told = changes === undefined ? 'null' : `[${lines(changes.map((one) => changeObject(one, !idle.has(one))))}\n]`;
  const results = `[${lines(pairs.map((pair) => pairObject(pair, numbers)))}\n]`;
  return `{${entries.join(',')},\n"changes":${told},\n"results":${results}}\n`;
}

function changeObject({ kind, document, steps, before, after }: Change, effect: boolean): object {
  return { kind, document, path: steps.join('/'), before: writtenObject(before), after: writtenObject(after), effect };
}

function writtenObject(side: Written | undefined): object | undefined {
  if (side === undefined) return undefined;
  const { uri, line, column } = side.position;
  return { text: side.text, file: uri, line, column };
}

function pairObject(pair: Pair, numbers: ReadonlyMap<Change, number>): object {
  const told = pair.after ?? pair.before;
  return {
    baselineState: pair.state,
    progress: pair.progress,
    detail: told?.detail,
    rule: told?.rule,
    subject: told?.subject,
    before: sideObject(pair.before),
    after: sideObject(pair.after),
    differences: pair.differences,
    changes: pair.explanations.map(({ change, how }) => ({ change: numbers.get(change), how })),
  };
}

function sideObject(told: Told | undefined): object | undefined {
  if (told === undefined) return undefined;
  const { uri, line, column } = told.position();
  const { kind, level, message, required, provided, correct, missing, sources, accepted } = told;
  return {
    kind,
    level,
    message,
    required,
    provided,
    correct,
    missing: missing.length === 0 ? undefined : missing,
    sources,
    accepted,
    file: uri,
    line,
    column,
  };
}
