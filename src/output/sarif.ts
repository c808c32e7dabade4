/**
 * The review as a SARIF log. The same review gives the same bytes: no times, no users, no machines.
 *
 * `full` is the record of everything that was checked. `upload` is for a code-scanning service, which would show
 * passes, open questions and accepted deviations as if they were defects.
 *
 * @see SARIF 2.1.0, OASIS Standard
 */
import { gzipSync } from 'node:zlib';
import type { Artifact, Invocation, ReportingDescriptor, Run } from 'sarif';
import type { Notification, Result } from '../engine/result.js';
import { safeJson, uriReference } from './escape.js';
import { CAUTION, suggestedAction, type Review, type SuggestedAction } from './report.js';
import { gatherClauses } from './sarif-clauses.js';
import { BASE, sarifNotification, sarifResult, type ResultContext } from './sarif-result.js';
import { descriptorWithoutCard, ruleDescriptor } from './sarif-rules.js';
import { limitResult, limitRule, notice, selectForUpload, UPLOAD_LIMITS } from './sarif-upload.js';

export interface SarifOptions {
  readonly profile: 'full' | 'upload';
  /** Of the review that the results are a part of; worked out from the results when absent. */
  readonly suggested?: SuggestedAction;
}

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** The whole log as text. */
export function printSarif(review: Review, options: SarifOptions): string {
  return [...sarifChunks(review, options)].join('');
}

/** The same text in pieces, one result on a line: a library of thousands need not be held as one string. */
export function sarifChunks(review: Review, { profile, suggested }: SarifOptions): Iterable<string> {
  return profile === 'full' ? fullChunks(review, suggested ?? suggestedAction(review)) : [uploadText(review)];
}

function* fullChunks(review: Review, suggested: SuggestedAction): Generator<string> {
  const clauses = gatherClauses(review);
  const cards = new Map(review.rules.map((card) => [card.id, card]));
  const rules = ruleIds(review.results, [...cards.keys()]).map((id) => {
    const card = cards.get(id);
    return card === undefined ? descriptorWithoutCard(id) : ruleDescriptor(card, clauses);
  });
  const artifacts = artifactsOf(review, review.results);
  const context: ResultContext = { ...contextOf(review, rules, artifacts), clauses };
  yield* logChunks(
    {
      ...baseRun(review, suggested, rules, review.notifications, context),
      artifacts: artifacts.map(artifactObject),
      taxonomies: [...clauses.taxonomies],
    },
    review.results,
    (result) => sarifResult(result, context),
  );
}

/** Findings only; fewer of them when the compressed file would be refused. */
function uploadText(review: Review): string {
  let limit: number = UPLOAD_LIMITS.results;
  let tooLarge: Notification[] = [];
  for (;;) {
    const text = uploadAtMost(review, limit, tooLarge);
    // Compressing is slow and nearly always idle: text this short cannot compress to more.
    const bytes = Buffer.byteLength(text) <= UPLOAD_LIMITS.bytes ? 0 : gzipSync(text).length;
    if (bytes <= UPLOAD_LIMITS.bytes || limit === 1) return text;
    limit = Math.max(1, Math.floor(Math.min(limit, review.results.length) * 0.75));
    tooLarge = [notice('The file would be larger than the service takes; findings are left out until it fits.')];
  }
}

function uploadAtMost(review: Review, limit: number, extra: readonly Notification[]): string {
  const { results, notices } = selectForUpload(review.results, limit);
  const cards = new Map(review.rules.map((card) => [card.id, card]));
  const limitedRules = ruleIds(results, []).map((id) => {
    const card = cards.get(id);
    return limitRule(card === undefined ? descriptorWithoutCard(id) : ruleDescriptor(card));
  });
  const rules = limitedRules.map(({ rule }) => rule);
  const context = contextOf(review, rules, []);
  const limited = results.map((result) => limitResult(sarifResult(result, context)));
  const told = [
    ...review.notifications,
    ...extra,
    ...notices,
    ...limitedRules.flatMap((one) => one.notices),
    ...limited.flatMap((one) => one.notices),
  ];
  return [
    ...logChunks(baseRun(review, suggestedAction(review), rules, told, context), limited, ({ result }) => result),
  ].join('');
}

function* logChunks<T>(
  run: Omit<Run, 'results'>,
  items: Iterable<T>,
  toResult: (item: T) => object,
): Generator<string> {
  yield `{\n"$schema":${safeJson(SCHEMA)},\n"version":"2.1.0",\n"runs":[{`;
  for (const [name, value] of Object.entries(run) as [string, object | string][]) {
    yield `\n${safeJson(name)}:${safeJson(value)},`;
  }
  yield '\n"results":[';
  let first = true;
  for (const item of items) {
    yield `${first ? '' : ','}\n${safeJson(toResult(item))}`;
    first = false;
  }
  yield '\n]}]}\n';
}

function baseRun(
  review: Review,
  { action, because }: SuggestedAction,
  rules: ReportingDescriptor[],
  notifications: readonly Notification[],
  context: ResultContext,
): Omit<Run, 'results'> {
  return {
    tool: {
      driver: {
        name: 'Lapwright',
        version: review.toolVersion,
        semanticVersion: review.toolVersion,
        shortDescription: { text: 'Reviews wall-detail submittals.' },
        fullDescription: { text: `Reviews wall-detail submittals. ${CAUTION}` },
        language: 'en-US',
        ...(context.clauses === undefined
          ? {}
          : { supportedTaxonomies: context.clauses.taxonomies.map(({ name }, index) => ({ name, index })) }),
        rules,
      },
    },
    columnKind: 'utf16CodeUnits',
    originalUriBaseIds: { [BASE]: { description: { text: 'The root folder of the library of details.' } } },
    invocations: [invocation(review, notifications, context)],
    properties: {
      suggestedAction: action ?? 'none',
      because,
      caution: CAUTION,
      failOn: review.failOn,
      ...(review.submittals === undefined
        ? {}
        : {
            submittals: review.submittals.map(({ number, revision, section, details }) => ({
              number,
              revision,
              section,
              details,
            })),
          }),
    },
  };
}

function invocation(review: Review, notifications: readonly Notification[], context: ResultContext): Invocation {
  const full = context.clauses !== undefined;
  return {
    // A rule that threw leaves part of the wall unseen: such a run must not pass for a whole one.
    executionSuccessful: review.exitCode < 2 && !notifications.some((one) => one.level === 'error'),
    exitCode: review.exitCode,
    ...(full && review.commandLine !== undefined ? { arguments: [...review.commandLine] } : {}),
    toolExecutionNotifications: notifications.map((one) => sarifNotification(one, context)),
  };
}

function contextOf(
  review: Review,
  rules: readonly ReportingDescriptor[],
  artifacts: readonly FileRole[],
): ResultContext {
  return {
    ruleIndex: new Map(rules.map((rule, index) => [rule.id, index])),
    cautions: new Map(review.rules.flatMap((rule) => (rule.caution === undefined ? [] : [[rule.id, rule.caution]]))),
    artifactIndex: new Map(artifacts.map(({ uri }, index) => [uri, index])),
  };
}

/** Ids of the rules to describe, ordered by code unit so that the list does not depend on what was found first. */
function ruleIds(results: readonly Result[], known: readonly string[]): string[] {
  return [...new Set([...known, ...results.map((result) => result.ruleId)])].sort();
}

interface FileRole {
  readonly uri: string;
  readonly underReview: boolean;
}

/** The files under review and those the results point into. */
function artifactsOf(review: Review, results: readonly Result[]): FileRole[] {
  const targets = new Set(review.details.map(({ uri }) => uri));
  const uris = new Set(targets);
  for (const result of results) {
    uris.add(result.file.uri);
    for (const place of [...(result.related ?? []), ...(result.flow ?? [])]) uris.add(place.at.document.file.uri);
    if (result.suppression !== undefined) uris.add(result.suppression.at.document.file.uri);
  }
  return [...uris].sort().map((uri) => ({ uri, underReview: targets.has(uri) }));
}

function artifactObject({ uri, underReview }: FileRole): Artifact {
  return {
    location: { uri: uriReference(uri), uriBaseId: BASE },
    encoding: 'utf-8',
    sourceLanguage: /\.(md|markdown)$/i.test(uri) ? 'markdown' : 'yaml',
    ...(underReview ? { roles: ['analysisTarget'] as Artifact.roles[] } : {}),
  };
}
