/**
 * The comparison as a SARIF log: the run of the new submission with the state of every result, and behind it the
 * results of the old one that are absent now.
 *
 * @see SARIF 2.1.0 section 3.27.24 (baselineState)
 */
import type { Pair } from '../../compare/types.js';
import { isRecord, type PlainRecord } from '../../compare/values.js';
import { safeJson } from '../escape.js';
import { changePlaces, changeText, MOST_EXPLANATIONS, type ComparisonReport } from './report.js';

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** What of an absent result is told again; the rest speaks of lists that are those of the old run. */
const KEPT = [
  'ruleId',
  'kind',
  'level',
  'message',
  'locations',
  'relatedLocations',
  'codeFlows',
  'partialFingerprints',
  'suppressions',
  'properties',
] as const;

/**
 * @param before run of the old submission, its results in the order of the comparison
 * @param after run of the new submission, likewise
 */
export function printComparisonSarif(report: ComparisonReport, before: PlainRecord, after: PlainRecord): string {
  const { comparison } = report;
  const merged = new MergedRun(before, after);
  const results = comparison.pairs.flatMap((pair) => {
    const own = pair.after === undefined ? undefined : listOf(after['results'])[pair.after.number];
    const gone = pair.before === undefined ? undefined : listOf(before['results'])[pair.before.number];
    const result = isRecord(own) ? own : isRecord(gone) ? merged.absent(gone) : undefined;
    return result === undefined ? [] : [withState(result, pair)];
  });
  const properties = {
    ...(isRecord(after['properties']) ? after['properties'] : {}),
    comparedWith: comparison.before.name,
    counts: comparison.counts,
    exitCode: report.exitCode,
  };
  const run = { ...after, ...merged.lists(), properties };
  const head = Object.entries(run).filter(([key]) => key !== 'results');
  const lines = head.map(([key, value]) => `\n${safeJson(key)}:${safeJson(value as object)}`);
  const body = `\n"results":[${results.map((one) => `\n${safeJson(one)}`).join(',')}\n]`;
  return `{\n"$schema":${safeJson(SCHEMA)},\n"version":"2.1.0",\n"runs":[{${[...lines, body].join(',')}}]}\n`;
}

function withState(result: PlainRecord, { state, progress, differences, explanations }: Pair): PlainRecord {
  const because = explanations
    .slice(0, MOST_EXPLANATIONS)
    .map(({ change }) => `${changeText(change)} (${changePlaces(change)})`);
  return {
    ...result,
    // Either every result of a run says whether it is suppressed, or none does.
    suppressions: listOf(result['suppressions']),
    baselineState: state,
    properties: {
      ...(isRecord(result['properties']) ? result['properties'] : {}),
      progress,
      ...(differences.length === 0 ? {} : { differences }),
      ...(because.length === 0 ? {} : { because }),
    },
  };
}

/** The lists of the new run, lengthened by what absent results need. */
class MergedRun {
  readonly #rules: unknown[];
  readonly #ruleIndex: Map<unknown, number>;
  readonly #artifacts: unknown[];
  readonly #artifactIndex: Map<unknown, number>;
  readonly #oldRules: Map<unknown, unknown>;
  readonly #tool: PlainRecord;
  readonly #driver: PlainRecord;

  constructor(before: PlainRecord, after: PlainRecord) {
    this.#tool = isRecord(after['tool']) ? after['tool'] : {};
    this.#driver = driverOf(after);
    this.#rules = [...listOf(this.#driver['rules'])];
    this.#ruleIndex = new Map(this.#rules.map((rule, i) => [isRecord(rule) ? rule['id'] : undefined, i]));
    this.#oldRules = new Map(
      listOf(driverOf(before)['rules']).map((rule) => [isRecord(rule) ? rule['id'] : undefined, rule]),
    );
    this.#artifacts = [...listOf(after['artifacts'])];
    this.#artifactIndex = new Map(
      this.#artifacts.map((one, i) => [isRecord(one) && isRecord(one['location']) ? one['location']['uri'] : i, i]),
    );
  }

  /** An old result whose indexes count in the lists of the new run. */
  absent(result: PlainRecord): PlainRecord {
    const kept = Object.fromEntries(
      KEPT.flatMap((key) => (Object.hasOwn(result, key) ? [[key, this.#moved(result[key])]] : [])),
    );
    return { ...kept, ruleIndex: this.#ruleNumber(result['ruleId']) };
  }

  lists(): PlainRecord {
    return {
      tool: { ...this.#tool, driver: { ...this.#driver, rules: this.#rules } },
      artifacts: this.#artifacts,
    };
  }

  #ruleNumber(id: unknown): number {
    const known = this.#ruleIndex.get(id);
    if (known !== undefined) return known;
    const old = this.#oldRules.get(id);
    // What a rule refers to is counted in the taxonomies of the old run.
    const rule = isRecord(old)
      ? Object.fromEntries(Object.entries(old).filter(([key]) => key !== 'relationships'))
      : { id };
    this.#ruleIndex.set(id, this.#rules.length);
    return this.#rules.push(rule) - 1;
  }

  /** The same value with every file counted in the new list. */
  #moved(value: unknown): unknown {
    if (Array.isArray(value)) return value.map((one) => this.#moved(one));
    if (!isRecord(value)) return value;
    const { uri } = value;
    const copy = Object.fromEntries(Object.entries(value).map(([key, one]) => [key, this.#moved(one)]));
    return typeof uri === 'string' && typeof value['index'] === 'number'
      ? { ...copy, index: this.#artifactNumber(uri, value['uriBaseId']) }
      : copy;
  }

  #artifactNumber(uri: string, uriBaseId: unknown): number {
    const known = this.#artifactIndex.get(uri);
    if (known !== undefined) return known;
    this.#artifactIndex.set(uri, this.#artifacts.length);
    const location = typeof uriBaseId === 'string' ? { uri, uriBaseId } : { uri };
    return this.#artifacts.push({ location }) - 1;
  }
}

function driverOf(run: PlainRecord): PlainRecord {
  const tool = run['tool'];
  return isRecord(tool) && isRecord(tool['driver']) ? tool['driver'] : {};
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}
