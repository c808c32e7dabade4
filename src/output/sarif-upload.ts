/**
 * What a code-scanning service takes: located breaches only, within its limits. Whatever is left out is said in
 * a notification, so that nobody takes a shortened list for the whole.
 *
 * @see "SARIF support for code scanning", GitHub Docs: limits as published there, read from a stored copy of
 *   unknown date; confirm
 */
import type { ReportingDescriptor, Result as SarifResult } from 'sarif';
import { LEVEL_ORDER, type Notification, type Result } from '../engine/result.js';
import { isFinding } from './report.js';

/**
 * The service refuses more than a first number of some things and keeps only a second, smaller one; these are the
 * numbers it keeps, because what it drops it drops in silence.
 */
export const UPLOAD_LIMITS = {
  results: 5000,
  rules: 25_000,
  tagsPerRule: 10,
  locationsPerResult: 100,
  flowLocationsPerResult: 1000,
  ruleTextLength: 1024,
  ruleNameLength: 255,
  /** Of the file compressed with gzip. */
  bytes: 10_000_000,
} as const;

export interface Selection {
  readonly results: readonly Result[];
  readonly notices: readonly Notification[];
}

/**
 * Breaches that nobody accepted; when there are too many, the gravest, still in the order of the review.
 *
 * @param limit at least 1
 */
export function selectForUpload(results: readonly Result[], limit: number = UPLOAD_LIMITS.results): Selection {
  const findings = results.filter(isFinding);
  if (findings.length <= limit) return { results: findings, notices: [] };
  const gravest = findings
    .map((result, index) => ({ index, weight: LEVEL_ORDER[result.level] }))
    .sort((a, b) => b.weight - a.weight || a.index - b.index)
    .slice(0, limit);
  const kept = new Set(gravest.map(({ index }) => index));
  return {
    results: findings.filter((_, index) => kept.has(index)),
    notices: [
      notice(
        `${String(limit)} of ${String(findings.length)} findings are in this file, the gravest first; the full profile has all.`,
      ),
    ],
  };
}

/** Shortens a rule to the limits; the notice says which rule lost what. */
export function limitRule(rule: ReportingDescriptor): { rule: ReportingDescriptor; notices: Notification[] } {
  const notices: Notification[] = [];
  const text = (name: string, value: string | undefined, limit: number): string => {
    if (value === undefined || value.length <= limit) return value ?? rule.id;
    notices.push(
      notice(`Rule ${rule.id}: its ${name} is cut from ${String(value.length)} to ${String(limit)} characters.`),
    );
    return cut(value, limit);
  };
  const tags = rule.properties?.tags ?? [];
  const { tagsPerRule } = UPLOAD_LIMITS;
  if (tags.length > tagsPerRule) {
    notices.push(
      notice(`Rule ${rule.id}: ${String(tagsPerRule)} of its ${String(tags.length)} cited clauses are listed.`),
    );
  }
  const limited: ReportingDescriptor = {
    ...rule,
    name: text('name', rule.name, UPLOAD_LIMITS.ruleNameLength),
    shortDescription: { text: text('short description', rule.shortDescription?.text, UPLOAD_LIMITS.ruleTextLength) },
    fullDescription: { text: text('description', rule.fullDescription?.text, UPLOAD_LIMITS.ruleTextLength) },
    properties: { ...rule.properties, tags: tags.slice(0, tagsPerRule) },
  };
  return { rule: limited, notices };
}

/** Shortens one result's path and related places; changes nothing within the limits. */
export function limitResult(result: SarifResult): { result: SarifResult; notices: Notification[] } {
  const { flowLocationsPerResult, locationsPerResult } = UPLOAD_LIMITS;
  const notices: Notification[] = [];
  const limited: SarifResult = { ...result };
  const steps = result.codeFlows?.[0]?.threadFlows[0]?.locations ?? [];
  if (steps.length > flowLocationsPerResult) {
    // The breach is at the end of a path: keep the end, and the start it came from.
    const first = steps.slice(0, 1);
    limited.codeFlows = [
      { threadFlows: [{ locations: [...first, ...steps.slice(steps.length - flowLocationsPerResult + 1)] }] },
    ];
    notices.push(
      notice(
        `A path of ${result.ruleId ?? 'a rule'} is cut from ${String(steps.length)} to ${String(flowLocationsPerResult)} steps.`,
      ),
    );
  }
  const related = result.relatedLocations ?? [];
  if (related.length > locationsPerResult) {
    limited.relatedLocations = related.slice(0, locationsPerResult);
    notices.push(
      notice(
        `A result of ${result.ruleId ?? 'a rule'} lists ${String(locationsPerResult)} of its ${String(related.length)} related places.`,
      ),
    );
  }
  return { result: limited, notices };
}

/** A warning of the printer about its own output. */
export function notice(message: string): Notification {
  return { level: 'warning', message };
}

/** Never splits a surrogate pair. */
function cut(text: string, limit: number): string {
  return `${text.slice(0, limit - 3).replace(/[\ud800-\udbff]$/, '')}...`;
}
