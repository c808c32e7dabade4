/**
 * The way through Lapwright: documents are read, a detail is typed, its wall face derived, every rule asked,
 * deviations applied, results ordered. Each arrow is one call below.
 */
import { acceptingRoles } from './acceptance.js';
import { applyDeviations, type DeviationUse } from './deviations.js';
import { fingerprintOf } from './fingerprint.js';
import { FinishedResult, Fingerprints } from './finished-result.js';
import { levelForAll } from './levels.js';
import { citedUnder, codesOf } from './jurisdiction.js';
import { governingLimit } from './limits-of-documents.js';
import { OWN_RULES } from './own-rules.js';
import { Listener } from './requirements-asked.js';
import { Ledger, type DetailRequirements } from './requirements-held.js';
import { outcomesOfRun } from './requirements-of-run.js';
import { LEVEL_ORDER, type Level, type Notification, type Outcome, type Result } from './result.js';
import type { Rule, RuleSubject } from './rule.js';
import type { RuleSettings } from './settings.js';
import { buildFace } from '../geometry/face.js';
import { outsideTheWall } from '../geometry/outside.js';
import type { WallFace } from '../geometry/types.js';
import { buildDetail, type Reach } from '../model/detail.js';
import { remembered } from '../model/remembered.js';
import type { Detail, Deviation } from '../model/types.js';
import { spanOfLocus } from '../reading/locus.js';
import type { ReadDocument, ReadingProblem } from '../reading/types.js';

export interface ReviewOptions {
  readonly rules: readonly Rule[];
  readonly settings: RuleSettings;
  /** ISO date (YYYY-MM-DD): deviations end by it. */
  readonly today: string;
  /** Shared by all details of a run, so that no two of its results have the same fingerprint. */
  readonly fingerprints?: Fingerprints;
  /** Shared likewise: what was said of products already, by rules that speak once of each. */
  readonly told?: Set<string>;
}

export interface DetailReview extends DetailRequirements {
  readonly documentId: string;
  readonly title: string;
  readonly results: readonly Result[];
  readonly notifications: readonly Notification[];
  /** What each declared deviation covers; those that cover nothing are not in it. */
  readonly deviationUses: ReadonlyMap<Deviation, DeviationUse>;
}

const OWN_LEVEL = new Map<string, Level>(OWN_RULES.map((r) => [r.id, r.level]));

/** Turns a reading problem into a result, so that it is printed like any other. */
export function resultOfProblem(problem: ReadingProblem, documentId: string): Result {
  const ruleId = `document/${problem.code}`;
  const document = placeholder(problem);
  const outcome: Outcome = {
    kind: 'fail',
    message: problem.message,
    at: { document, path: [] },
    related: (problem.related ?? []).map((r) => ({ message: r.message, at: { document: placeholder(r), path: [] } })),
  };
  return {
    ...outcome,
    ruleId,
    level: OWN_LEVEL.get(ruleId) ?? 'error',
    documentId,
    file: problem.file,
    span: problem.span,
    fingerprint: fingerprintOf(ruleId, documentId, { ...outcome, subject: problem.message }, 0),
  };
}

/** Stands in for a document that could not be read: it knows only the one place. */
function placeholder(place: Pick<ReadingProblem, 'file' | 'span'>): ReadDocument {
  return { kind: 'detail', id: place.file.uri, file: place.file, data: {}, spanOf: () => place.span };
}

const knownRules = remembered(
  (rules: readonly Rule[]): ReadonlySet<string> => new Set([...rules.map((r) => r.id), ...OWN_RULES.map((r) => r.id)]),
);

/** What a rule sees of one detail. */
function subjectFor(
  detail: Detail,
  face: () => WallFace,
  rule: Rule,
  settings: RuleSettings,
  listener: Listener,
): RuleSubject {
  const values = settings.parametersOf(rule);
  const read = (name: string): string | number | boolean => {
    const value = values.get(name);
    if (value === undefined) throw new Error(`asked for "${name}", which it does not declare as a parameter`);
    return value;
  };
  return {
    detail,
    get face() {
      return face();
    },
    number: (name) => Number(read(name)),
    word: (name) => String(read(name)),
    truth: (name) => read(name) === true,
    limit: (query) => governingLimit(detail, query, (bearing, found) => listener.heed(query, bearing, found)),
  };
}

function finish(
  ruleId: string,
  ruleLevel: Level,
  set: Level | undefined,
  outcome: Outcome,
  documentId: string,
  fingerprints: Fingerprints,
): FinishedResult {
  const bySource = levelForAll(outcome.level ?? ruleLevel, [outcome.sources?.[0], ...(outcome.alsoBroken ?? [])]);
  const level = outcome.kind === 'fail' ? (set ?? bySource) : 'none';
  return new FinishedResult(ruleId, documentId, outcome, level, fingerprints);
}

/** Reviews one typed detail. Pure: same detail, rules, settings and date, same answer. */
export function reviewDetail(detail: Detail, options: ReviewOptions, known?: WallFace): DetailReview {
  const notifications: Notification[] = [];
  const fingerprints = options.fingerprints ?? new Fingerprints();
  const ran = new Set<string>();
  const results: FinishedResult[] = [];
  const told = options.told ?? new Set<string>();
  const again = new Set<FinishedResult>();
  let held = known;
  const face = (): WallFace => (held ??= buildFace(detail));
  const codes = codesOf(detail.project);
  const ledger = new Ledger(detail, (ruleId, outcome) => {
    const result = ownResult(ruleId, outcome, detail.id, options.settings, fingerprints);
    if (result !== undefined) results.push(result);
    return result;
  });
  for (const rule of options.rules) {
    const set = options.settings.levelOf(rule.id);
    if (set === 'off') continue;
    ran.add(rule.id);
    try {
      const listener = new Listener();
      const asked = listener.listen(rule.review(subjectFor(detail, face, rule, options.settings, listener)));
      for (const { outcome, bearing } of asked.answers) {
        const product = rule.once === 'per product' ? productOf(outcome) : undefined;
        const key = product === undefined ? '' : [rule.id, product.file.uri, product.id, outcome.message].join('\n');
        const isRepeated = product !== undefined && told.has(key);
        // A deviation of this detail may still cover what was told with another detail.
        if (isRepeated && !detail.deviations.some((d) => d.rule?.value === rule.id)) continue;
        const cited = citedUnder(codes, outcome);
        const result = finish(rule.id, rule.level, set, cited, product?.id ?? detail.id, fingerprints);
        results.push(result);
        if (isRepeated) again.add(result);
        else if (product !== undefined) told.add(key);
        if (bearing.length > 0) ledger.answered(rule.id, result, bearing);
      }
      ledger.asked(rule.id, asked, listener.clashes);
    } catch (error) {
      notifications.push({
        level: 'error',
        ruleId: rule.id,
        documentId: detail.id,
        uri: detail.at.document.file.uri,
        message: `The rule ${rule.id} failed on ${detail.id}: ${error instanceof Error ? error.message : String(error)}. Its check is missing from this review; the others ran.`,
      });
    }
  }
  const { outcomes, uses } = applyDeviations(
    results,
    detail.deviations,
    options.today,
    ran,
    knownRules(options.rules),
    acceptingRoles(detail.project),
  );
  for (const { ruleId, outcome } of outcomes) {
    results.push(finish(ruleId, OWN_LEVEL.get(ruleId) ?? 'warning', undefined, outcome, detail.id, fingerprints));
  }
  const once = again.size === 0 ? results : results.filter((r) => !again.has(r));
  const summary = ledger.summary();
  return {
    documentId: detail.id,
    title: detail.title,
    results: inOrder(once),
    notifications,
    deviationUses: uses,
    ...summary,
  };
}

/** The product document that an outcome points into. */
function productOf({ at }: Outcome): ReadDocument | undefined {
  return at.document.kind === 'product' ? at.document : undefined;
}

/** A result of one of the engine's own rules, at the level of its rule unless the settings say another; none when they say off. */
export function ownResult(
  ruleId: string,
  outcome: Outcome,
  documentId: string,
  settings: RuleSettings,
  fingerprints: Fingerprints,
): FinishedResult | undefined {
  const set = settings.levelOf(ruleId);
  if (set === 'off') return undefined;
  return finish(ruleId, OWN_LEVEL.get(ruleId) ?? 'warning', set, outcome, documentId, fingerprints);
}

/**
 * What is wrong with the requirements as a whole, once for all details of a run. Such a result belongs to the file that
 * the requirement stands in.
 *
 * @param products ids of all products in reach of the details
 */
export function resultsOfRequirements(
  reviews: readonly DetailRequirements[],
  products: readonly string[],
  { settings, fingerprints = new Fingerprints() }: Pick<ReviewOptions, 'settings' | 'fingerprints'>,
): Result[] {
  return outcomesOfRun(reviews, products).flatMap(
    ({ ruleId, outcome }) => ownResult(ruleId, outcome, outcome.at.document.file.uri, settings, fingerprints) ?? [],
  );
}

const NOTHING_HELD: DetailRequirements & Pick<DetailReview, 'deviationUses'> = {
  requirementsHeld: [],
  clashes: [],
  deviationUses: new Map(),
};

/** Reads, types and reviews one detail document. */
export function reviewDocument(
  document: ReadDocument,
  reach: Reach,
  options: ReviewOptions,
  elsewhere?: (productId: string) => ReadDocument | undefined,
): DetailReview {
  const { detail, problems } = buildDetail(document, reach, elsewhere);
  if (detail === undefined) {
    return {
      documentId: document.id,
      title: document.id,
      results: problems.map((p) => resultOfProblem(p, document.id)).sort(compareResults),
      notifications: [],
      ...NOTHING_HELD,
    };
  }
  const face = buildFace(detail);
  const outside = outsideTheWall(detail, face);
  if (outside.length > 0) {
    const results = outside.map(({ at, message }) => {
      const problem = { code: 'wrong-geometry' as const, message, file: at.document.file, span: spanOfLocus(at) };
      return resultOfProblem(problem, document.id);
    });
    return {
      documentId: document.id,
      title: detail.title,
      results: inOrder(results),
      notifications: [],
      ...NOTHING_HELD,
    };
  }
  return reviewDetail(detail, options, face);
}

/**
 * What asks for something comes in the order of its place; what passed stays in the order of the rules, which is fixed
 * too and costs nothing.
 */
export function inOrder(results: readonly Result[]): Result[] {
  const asking = results.filter((r) => r.kind !== 'pass').sort(compareResults);
  return [...asking, ...results.filter((r) => r.kind === 'pass')];
}

/** Total and free of locale: file by code unit, place, rule, message. */
export function compareResults(a: Result, b: Result): number {
  const text = (x: string, y: string): number => (x < y ? -1 : x > y ? 1 : 0);
  return (
    text(a.file.uri, b.file.uri) ||
    a.span.start - b.span.start ||
    a.span.end - b.span.end ||
    text(a.ruleId, b.ruleId) ||
    text(a.message, b.message) ||
    text(a.documentId, b.documentId)
  );
}

/** True when an unsuppressed finding is at or above the level chosen to fail on. */
export function failsOn(results: readonly Result[], chosen: Level | 'never'): boolean {
  if (chosen === 'never') return false;
  return results.some(
    (r) =>
      r.kind === 'fail' &&
      r.suppression === undefined &&
      LEVEL_ORDER[r.level] >= LEVEL_ORDER[chosen] &&
      r.level !== 'none',
  );
}
