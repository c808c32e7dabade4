/**
 * One side of a comparison from a SARIF file that Lapwright wrote earlier. The file is untrusted: everything that is
 * used of it is looked at first.
 *
 * @see SARIF 2.1.0 sections 3.13 (sarifLog), 3.14 (run), 3.27 (result)
 */
import type { Basis, Kind, Level, Provenance } from '../engine/result.js';
import type { CitedSource, Position, Submission, Told, ToldDetail } from './types.js';
import { isRecord, type PlainRecord } from './values.js';

/** A file that cannot be one side of a comparison. The message says what was found, what is expected and what to do. */
export class UnusableSarif extends Error {
  override readonly name = 'UnusableSarif';
}

const WRITE_ONE = 'write one with "lapwright review --format sarif"';
const KINDS: readonly Kind[] = ['pass', 'open', 'review', 'fail', 'notApplicable', 'informational'];
const LEVELS: readonly Level[] = ['none', 'note', 'warning', 'error'];
const BASES: readonly Basis[] = ['code', 'specification', 'product data', 'standard', 'guide', 'practice', 'physics'];
const PROVENANCES: readonly Provenance[] = [
  'seen',
  'seen at second hand',
  'from memory, confirm',
  'common practice, no source',
  'computed',
  'project document',
];

export interface SarifSubmission {
  readonly submission: Submission;
  /** The run as it stands in the file; its results that were absent already are taken out. */
  readonly run: PlainRecord;
}

/**
 * @param name of the file, for messages
 * @param text of the file
 * @throws UnusableSarif when it is no SARIF file of Lapwright, or not the full record
 */
export function submissionOfSarif(name: string, text: string): SarifSubmission {
  const run = runOf(name, text);
  const all = run['results'] as readonly unknown[];
  const standing = all.filter((one) => !isRecord(one) || one['baselineState'] !== 'absent');
  const results = standing.map((one, number) => toldOf(name, one, number));
  const details = new Map<string, ToldDetail>();
  for (const one of results) {
    if (!details.has(one.detail) && !one.rule.startsWith('document/'))
      details.set(one.detail, { id: one.detail, title: undefined, uri: one.position().uri });
  }
  const rules = new Set(list(at(at(at(run, 'tool'), 'driver'), 'rules')).map((rule) => at(rule, 'id')));
  const failed = new Set(
    list(at(first(run['invocations']), 'toolExecutionNotifications')).map(
      (one) => `${String(at(at(one, 'associatedRule'), 'id'))} ${String(at(at(one, 'properties'), 'detail'))}`,
    ),
  );
  const submission: Submission = {
    name,
    results,
    details: [...details.values()],
    reach: () => [],
    reads: () => undefined,
    isAsked: (rule, detail) => rules.has(rule) && !failed.has(`${rule} ${detail}`),
  };
  return { submission, run: { ...run, results: standing } };
}

/** The schema of SARIF nests less than 20 levels deep. */
const MOST_LEVELS = 64;

function isDeeperThan(value: unknown, levels: number): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return levels === 0 || Object.values(value).some((one) => isDeeperThan(one, levels - 1));
}

function runOf(name: string, text: string): PlainRecord {
  let log: unknown;
  try {
    log = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch {
    throw new UnusableSarif(`${name} is not JSON, so it is no SARIF file; ${WRITE_ONE}.`);
  }
  if (isDeeperThan(log, MOST_LEVELS))
    throw new UnusableSarif(
      `${name} is nested more than ${MOST_LEVELS} levels deep, which Lapwright never writes; ${WRITE_ONE}.`,
    );
  if (!isRecord(log) || !Array.isArray(log['runs']))
    throw new UnusableSarif(`${name} has no "runs", so it is no SARIF file; ${WRITE_ONE}.`);
  if (log['version'] !== '2.1.0')
    throw new UnusableSarif(
      `${name} is SARIF of version ${shown(log['version'])}; 2.1.0 is read. ${capital(WRITE_ONE)}.`,
    );
  const runs = log['runs'] as readonly unknown[];
  if (runs.length !== 1) throw new UnusableSarif(`${name} holds ${runs.length} runs; a file with one is expected.`);
  const [run] = runs;
  const driver = at(at(run, 'tool'), 'driver');
  const tool = at(driver, 'name');
  if (!isRecord(run) || tool !== 'Lapwright')
    throw new UnusableSarif(
      `${name} was written by ${shown(tool)}, and only the results of Lapwright can be compared; ${WRITE_ONE}.`,
    );
  if (!Array.isArray(run['results']))
    throw new UnusableSarif(`${name} has no "results"; the run it tells of was not finished. ${capital(WRITE_ONE)}.`);
  if (!Array.isArray(run['taxonomies']))
    throw new UnusableSarif(
      `${name} was written with --upload and holds findings only, so nothing could be said of what passed; write it again without --upload.`,
    );
  return run;
}

function toldOf(file: string, result: unknown, number: number): Told {
  const bad = (what: string): UnusableSarif =>
    new UnusableSarif(`Result ${number + 1} of ${file} has no ${what}, which Lapwright always writes; ${WRITE_ONE}.`);
  if (!isRecord(result)) throw bad('fields');
  const properties = isRecord(result['properties']) ? result['properties'] : {};
  const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);
  const needed = (value: unknown, what: string): string => {
    const found = text(value);
    if (found === undefined) throw bad(what);
    return found;
  };
  const kind = KINDS.find((one) => one === result['kind']);
  const level = LEVELS.find((one) => one === result['level']);
  if (kind === undefined) throw bad(`kind that is one of ${KINDS.join(', ')}`);
  if (level === undefined) throw bad(`level that is one of ${LEVELS.join(', ')}`);
  const location = first(result['locations']);
  const position = positionOf(location);
  if (position === undefined) throw bad('place with file, line and column');
  const [suppression] = list(result['suppressions']);
  return {
    number,
    detail: needed(properties['detail'], 'detail among its properties'),
    rule: needed(result['ruleId'], 'ruleId'),
    subject: text(properties['subject']) ?? '',
    kind,
    level,
    message: ownMessage(needed(at(result['message'], 'text'), 'message')),
    required: text(properties['required']),
    provided: text(properties['provided']),
    correct: text(properties['correct']),
    missing: list(properties['missing']).filter((one) => typeof one === 'string'),
    sources: list(properties['sources']).flatMap(sourceOf),
    accepted: suppression === undefined ? undefined : (text(at(suppression, 'justification')) ?? ''),
    path: text(at(first(at(location, 'logicalLocations')), 'fullyQualifiedName')) ?? '',
    position: () => position,
    evidence: () => [],
  };
}

/**
 * The first line of a result's text is the rule's own message, with links where places are named. Brackets inside of
 * the words of a link are written with a backslash, so a link ends before the next one begins.
 */
function ownMessage(text: string): string {
  const [line = ''] = text.split('\n');
  return line
    .replace(/ See (?:\[(?:\\.|[^[\]\\])*\]\(\d{1,6}\)(?:; )?)+\.$/, '')
    .replace(/\\[[\]\\]|\[((?:\\.|[^[\]\\])*)\]\(\d{1,6}\)/g, (found, words?: string) => plain(words ?? found))
    .replace(/\{\{/g, '{')
    .replace(/\}\}/g, '}');
}

const plain = (text: string): string => text.replace(/\\([[\]\\])/g, '$1');

function sourceOf(value: unknown): CitedSource[] {
  const basis = BASES.find((one) => one === at(value, 'basis'));
  const citation = at(value, 'citation');
  const provenance = PROVENANCES.find((one) => one === at(value, 'provenance'));
  if (basis === undefined || provenance === undefined || typeof citation !== 'string') return [];
  return [{ basis, citation, provenance }];
}

function positionOf(location: unknown): Position | undefined {
  const physical = at(location, 'physicalLocation');
  const uri = at(at(physical, 'artifactLocation'), 'uri');
  const region = at(physical, 'region');
  const [line, column] = [at(region, 'startLine'), at(region, 'startColumn')];
  if (typeof uri !== 'string' || !isCount(line) || !isCount(column)) return undefined;
  return { uri: decoded(uri), line, column };
}

function isCount(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value > 0;
}

/** Percent-encoding undone; an address that cannot be decoded is shown as it stands. */
function decoded(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}

function at(value: unknown, key: string): unknown {
  return isRecord(value) && Object.hasOwn(value, key) ? value[key] : undefined;
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function first(value: unknown): unknown {
  return list(value)[0];
}

function shown(value: unknown): string {
  return typeof value === 'string' ? `"${value.slice(0, 60)}"` : 'an unknown program or version';
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
