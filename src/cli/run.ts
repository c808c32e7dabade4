/**
 * One whole review, from paths to results: reads the library, gathers the rules, reviews every detail that was
 * asked for, and puts everything in order.
 */
import { ruleCards } from '../engine/cards.js';
import { OWN_RULES } from '../engine/own-rules.js';
import { joinRules, loadPack } from '../engine/packs.js';
import { Fingerprints } from '../engine/finished-result.js';
import type { DetailRequirements } from '../engine/requirements-held.js';
import { requirementsOfRun } from '../engine/requirements-of-run.js';
import {
  failsOn,
  inOrder,
  resultOfProblem,
  resultsOfRequirements,
  reviewDocument,
  type DetailReview,
} from '../engine/review.js';
import type { ReviewedSubmittal } from '../engine/submittal/facts.js';
import type { Notification, Result } from '../engine/result.js';
import { ruleSettings, type RuleSettings } from '../engine/settings.js';
import { buildDetail } from '../model/detail.js';
import { buildSubmittals } from '../model/specification.js';
import type { Detail } from '../model/types.js';
import type { FailOn, Review, ReviewedDetail } from '../output/report.js';
import { loadLibrary, type Library } from '../reading/library.js';
import type { ReadDocument } from '../reading/types.js';
import { BUILT_IN_RULES } from '../../generated/rules.js';
import { reviewHeld, submittalsAsked, type HeldDetails } from './submittals.js';
import { VERSION } from './version.js';
import { say } from './say.js';

export interface RunOptions {
  readonly inputs: readonly string[];
  readonly cwd: string;
  readonly stdin?: { readonly text: string; readonly name?: string };
  /** Packs the person named. */
  readonly packs: readonly string[];
  /** Also load the packs that the settings of the library name. Absent: the command has no such option. */
  readonly allowPacks?: boolean;
  /** Absent: as the settings say, else `error`. */
  readonly failOn?: FailOn;
  /** ISO date of the review. */
  readonly today: string;
  readonly skipOthers: boolean;
  readonly dependents: boolean;
  readonly commandLine?: readonly string[];
}

export interface Run {
  readonly review: Review;
  /** Remarks for standard error: nothing found, a file passed over. */
  readonly notices: readonly string[];
  /** False when there was nothing to review at all: the program could not do its job. */
  readonly ran: boolean;
  /**
   * The typed detail behind a reviewed one, for printers that draw; built anew at each call, so that a large library is
   * not held in memory. `undefined` when its document could not be typed.
   */
  readonly detailOf: (detail: ReviewedDetail) => Detail | undefined;
  /** What was read. */
  readonly library: Library;
  /** Levels and parameters of the rules in the library, for whoever asks single rules again. */
  readonly settings: RuleSettings;
}

/** Details to review: those asked for, those of a submittal that was asked for and, if wanted, those that use another document that was asked for. */
function chosenDetails(library: Library, submittals: readonly HeldDetails[], dependents: boolean): ReadDocument[] {
  const asked = library.documents.filter((d) => library.reviewed(d));
  const held = new Set(submittals.flatMap((s) => s.details));
  const details = library.documents.filter((d) => d.kind === 'detail' && (library.reviewed(d) || held.has(d)));
  if (!dependents) return details;
  const others = new Set(asked.filter((d) => d.kind !== 'detail'));
  if (others.size === 0) return details;
  const uses = (detail: ReadDocument): boolean => {
    const reach = library.reach(detail);
    return [reach.project, ...reach.products.values(), ...reach.specifications, library.settings].some(
      (d) => d !== undefined && others.has(d),
    );
  };
  return library.documents.filter((d) => d.kind === 'detail' && (library.reviewed(d) || held.has(d) || uses(d)));
}

/** Packs to load, and a remark for each that settings name but nobody allowed. */
async function gatherRules(options: RunOptions, library: Library) {
  const named = (library.settings?.data['packs'] ?? []) as readonly string[];
  const notifications: Notification[] = [];
  if (options.allowPacks !== true) {
    const way = options.allowPacks === undefined ? '' : '--allow-packs, or with ';
    for (const name of named)
      notifications.push({
        level: 'warning',
        message: `The settings name the rule pack "${name}". A pack is code, so it is not loaded unless you say so: run with ${way}--pack ${name}.`,
      });
  }
  const packs = await Promise.all([
    ...options.packs.map((name) => loadPack(name, options.cwd)),
    ...(options.allowPacks === true ? named.map((name) => loadPack(name, library.root)) : []),
  ]);
  const joined = joinRules(BUILT_IN_RULES, packs);
  const pages = Object.assign({}, ...packs.map((p) => p.pages)) as Record<string, string>;
  return { rules: joined.rules, pages, notifications: [...notifications, ...joined.notifications] };
}

/** Runs a review. Throws only when the inputs themselves cannot be used (see `loadLibrary`). */
export async function runReview(options: RunOptions): Promise<Run> {
  const library = await loadLibrary([...options.inputs], {
    cwd: options.cwd,
    skipOthers: options.skipOthers,
    whole: options.dependents,
    ...(options.stdin === undefined ? {} : { stdin: options.stdin }),
  });
  const { rules, pages: packPages, notifications } = await gatherRules(options, library);
  const settings = ruleSettings(
    library.settings,
    rules,
    OWN_RULES.map((r) => r.id),
  );
  const results: Result[] = [...library.problems, ...settings.problems].map((p) => resultOfProblem(p, p.file.uri));
  const details: ReviewedDetail[] = [];
  const documents = new Map<ReviewedDetail, ReadDocument>();
  const fingerprints = new Fingerprints();
  const told = new Set<string>();
  const remarks: Notification[] = [...notifications];
  const requirements: DetailRequirements[] = [];
  const products = new Set<string>();
  const specifications = new Set<ReadDocument>();
  const submittals = submittalsAsked(library);
  const holders = new Map<ReadDocument, ReadDocument[]>();
  for (const { submittal, details: held } of submittals)
    for (const document of held) holders.set(document, [...(holders.get(document) ?? []), submittal]);
  const reviews = new Map<ReadDocument, DetailReview>();
  for (const document of chosenDetails(library, submittals, options.dependents)) {
    const reach = library.reach(document);
    const holding = holders.get(document) ?? [];
    const one = reviewDocument(
      document,
      {
        ...reach,
        ...(library.settings === undefined ? {} : { settings: library.settings }),
        ...(holding.length === 0 ? {} : { submittals: holding }),
      },
      { rules, settings, today: options.today, fingerprints, told },
      (id) => library.elsewhere('product', id),
    );
    // Not `push(...)`: a library has more results than a call can take arguments.
    for (const result of one.results) results.push(result);
    remarks.push(...one.notifications);
    requirements.push({ requirementsHeld: one.requirementsHeld, clashes: one.clashes });
    for (const id of reach.products.keys()) products.add(id);
    for (const specification of reach.specifications) specifications.add(specification);
    const reviewed: ReviewedDetail = { id: one.documentId, title: one.title, uri: document.file.uri };
    details.push(reviewed);
    documents.set(reviewed, document);
    if (holding.length > 0) reviews.set(document, one);
  }
  const ran = new Set(rules.filter((r) => settings.levelOf(r.id) !== 'off').map((r) => r.id));
  const reviewedSubmittals = submittals.map((held): ReviewedSubmittal => {
    const one = reviewHeld(held, { library, reviews, settings, fingerprints, ran, today: options.today });
    for (const result of one.results) results.push(result);
    remarks.push(...one.notifications);
    return one.facts;
  });
  for (const result of resultsOfRequirements(requirements, [...products], { settings, fingerprints }))
    results.push(result);
  const failOn = options.failOn ?? (library.settings?.data['failOn'] as FailOn | undefined) ?? 'error';
  const broken = remarks.some((n) => n.level === 'error');
  const exitCode = failsOn(results, failOn) ? 1 : broken ? 2 : 0;
  // Pages are many and long: they are loaded only by printers that show them.
  const review: Review = {
    toolVersion: VERSION,
    results: inOrder(results),
    notifications: remarks,
    details,
    ...(reviewedSubmittals.length === 0 ? {} : { submittals: reviewedSubmittals }),
    requirementsHeld: requirementsOfRun(requirements),
    itemsRequired: [...specifications].flatMap(buildSubmittals),
    failOn,
    exitCode,
    rules: ruleCards(rules, packPages, settings.levelOf),
    ...(options.commandLine === undefined ? {} : { commandLine: options.commandLine }),
  };
  const hasRun = details.length > 0 || results.length > 0 || library.documents.some((d) => library.reviewed(d));
  const detailOf = (detail: ReviewedDetail): Detail | undefined => {
    const document = documents.get(detail);
    if (document === undefined) return undefined;
    return buildDetail(document, library.reach(document), (id) => library.elsewhere('product', id)).detail;
  };
  return { review, notices: library.notices, ran: hasRun, detailOf, library, settings };
}

/** Remarks on a run, on standard error. */
export function tellNotices({ notices, review }: Run): void {
  for (const notice of notices) say(notice);
  for (const n of review.notifications) say(`${n.level}: ${n.message}`);
}

/** The same review with the pages of the built-in rules, for printers that show them. */
export async function withPages(review: Review): Promise<Review> {
  const { PAGES } = await import('../../generated/pages.js');
  return {
    ...review,
    rules: review.rules.map((card) =>
      PAGES[card.id] === undefined ? card : { ...card, page: () => PAGES[card.id] ?? '' },
    ),
  };
}
