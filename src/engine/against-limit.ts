/** The outcome of holding one provided value against the limit that governs: the shape most rules need. */
import type { Allowed, Limit } from './limits.js';
import type { Outcome, Source } from './result.js';
import { BASE_UNITS, type Dimension, type Quantity } from '../quantity/types.js';
import { formatQuantity, type Like } from '../quantity/format.js';
import type { Apply, Measured } from '../model/types.js';
import type { Locus } from '../reading/types.js';

export interface Comparison {
  /** `sill of window`: what was checked. */
  readonly subject: string;
  /** Where the value is written; where it should be when it is missing. */
  readonly at: Locus;
  readonly dimension: Dimension | 'count';
  /** Base unit. */
  readonly provided: number;
  /** Whose units to speak: normally the value as the author wrote it. */
  readonly like?: Pick<Quantity, 'unit' | 'system'> | undefined;
  readonly comparison: 'at least' | 'at most';
  /** Absent: nothing asks for anything, and the result is open. */
  readonly limit: Limit | undefined;
  /** The sentence up to the limit, without a full stop: `(p) => \`Flashing at the sill reaches ${p} onto the wall\``. */
  readonly sentence: (provided: string) => string;
  /** What to change, for a breach: `(required) => \`Widen "pan" to ${required}.\`` */
  readonly correct: (required: string) => string;
  /** For `open`: fields any of which would give the limit. */
  readonly missing: readonly string[];
  readonly related?: Outcome['related'];
  /** More about the provided value: `at its corners`. */
  readonly remark?: string;
}

/** Rounding of fractions of inches and of snapped positions; in the base unit of the dimension. */
const TOLERANCE: Partial<Record<Dimension | 'count', number>> = { length: 0.1, film: 0.5, pressure: 0.01 };

/** What a crew can build to when a reviewer writes another number beside it. */
const BUILT_TO: ReadonlySet<Dimension | 'count'> = new Set(['length', 'film', 'slope', 'fraction', 'time', 'count']);

/** Writes a value of a dimension; counts are written bare. */
export function written(value: number, dimension: Dimension | 'count', like?: Like): string {
  if (dimension === 'count') return String(value);
  return formatQuantity(value, dimension, like ?? (BASE_UNITS[dimension] === 'mm' ? { system: 'US' } : undefined));
}

function isMet(c: Comparison, { value }: Pick<Limit, 'value'>): boolean {
  const tolerance = TOLERANCE[c.dimension] ?? Math.abs(value) * 1e-6;
  return c.comparison === 'at least' ? c.provided >= value - tolerance : c.provided <= value + tolerance;
}

/** The value with as many digits as tell it from the ends it is held against; three say less than a fraction. */
function finer(c: Comparison, ends: readonly (number | undefined)[]): string {
  const dimension = c.dimension as Dimension;
  const system = BASE_UNITS[dimension] === 'mm' ? ({ system: 'US' } as const) : {};
  for (let digits = 3; ; digits++) {
    const like = { ...system, ...(c.like?.unit === undefined ? c.like : { unit: c.like.unit }), digits };
    const text = formatQuantity(c.provided, dimension, like);
    if (digits === 9 || ends.every((end) => end === undefined || text !== formatQuantity(end, dimension, like)))
      return text;
  }
}

/** What requirements ask beside the end of the limit and the value does not meet. */
function unmet(c: Comparison, limit: Limit): readonly Allowed[] {
  return (limit.also ?? []).filter(({ ranges }) =>
    ranges.every(({ least, most }) => {
      const slack = TOLERANCE[c.dimension] ?? Math.max(Math.abs(least ?? 0), Math.abs(most ?? 0)) * 1e-6;
      return c.provided < (least ?? -Infinity) - slack || c.provided > (most ?? Infinity) + slack;
    }),
  );
}

/** Sources beside the governing one that the value does not meet either: who accepts one breach has not accepted these. */
function alsoBroken(c: Comparison, limit: Limit, governing: Source): Pick<Outcome, 'alsoBroken'> {
  const broken = [...limit.others.filter((other) => !isMet(c, other)), ...unmet(c, limit)]
    .map(({ source }) => source)
    .filter(({ requirement }) => requirement === undefined || requirement !== governing.requirement);
  return broken.length === 0 ? {} : { alsoBroken: broken };
}

const BINDS: ReadonlySet<Source['basis']> = new Set<Source['basis']>(['code', 'specification', 'product data']);

/** What binds and is broken as well, said where the limit that governs only advises. */
function bindsToo(c: Comparison, limit: Limit, governing: Source): string {
  if (BINDS.has(governing.basis)) return '';
  return limit.others
    .filter((other) => BINDS.has(other.source.basis) && !isMet(c, other))
    .map((other) => ` ${other.source.citation} (${c.comparison} ${other.text}) is not met either.`)
    .join('');
}

/** The sources behind a limit, the governing one first, each once. */
function sourcesOf(limit: Limit, governing = limit.source): readonly Source[] {
  const { others, also = [], overruled = [], conflict } = limit;
  if (others.length + also.length + overruled.length === 0 && conflict === undefined) return [governing];
  const all = [
    governing,
    limit.source,
    ...[...others, ...also, ...overruled, ...(conflict ? [conflict] : [])].map((o) => o.source),
  ];
  const told = new Set<unknown>();
  return all.filter((source) => {
    const key = source.requirement ?? source;
    if (told.has(key)) return false;
    told.add(key);
    return true;
  });
}

/** What gave way to the order of precedence of the contract, said with the result that it would have changed. */
function givenWay(limit: Limit): string {
  return (limit.overruled ?? [])
    .map(
      ({ source, asks, text }) =>
        ` ${source.citation} asks for ${asks ?? text} and gives way by the order of precedence of the project.`,
    )
    .join('');
}

/** `pass`, `fail` or, without a limit, `open`. */
export function againstLimit(c: Comparison): Outcome {
  const { subject, at, related, limit } = c;
  const plain = written(c.provided, c.dimension, c.like);
  const remark = c.remark === undefined ? '' : ` ${c.remark}`;
  if (limit === undefined) {
    const provided = `${plain}${remark}`;
    const message = `${c.sentence(provided)}; no document in reach says how much is required.`;
    return { kind: 'open', message, at, subject, related, provided, missing: c.missing };
  }
  const inEnd = isMet(c, limit);
  const beside = inEnd ? unmet(c, limit)[0] : undefined;
  const met = inEnd && beside === undefined;
  // A breach smaller than the rounding of the printed value would read as `4 in, at least 4 in`.
  const ends = [limit.value, ...(beside?.ranges.flatMap((r) => [r.least, r.most]) ?? [])];
  const close =
    !met &&
    c.dimension !== 'count' &&
    ends.some((end) => end !== undefined && plain === written(end, c.dimension, c.like));
  const provided = `${close ? finer(c, ends) : plain}${remark}`;
  const required = beside?.asks ?? limit.asks ?? `${c.comparison} ${limit.text}`;
  const governing = beside?.source ?? limit.source;
  const clash =
    limit.conflict === undefined
      ? ''
      : ` ${limit.conflict.source.citation} asks for ${limit.conflict.asks ?? `${c.comparison === 'at least' ? 'no more' : 'no less'} than ${limit.conflict.text}`}: no value meets both, ask which governs.`;
  const message = `${c.sentence(provided)}; ${required} is required (${governing.citation}).${inEnd ? '' : bindsToo(c, limit, governing)}${clash}${givenWay(limit)}`;
  const sources = sourcesOf(limit, governing);
  if (met && limit.conflict === undefined)
    return { kind: 'pass', message, at, subject, related, required, provided, sources };
  const correct = met ? 'Have the designer settle which document governs, and state one value.' : c.correct(required);
  const more = met ? {} : alsoBroken(c, limit, governing);
  // A size is changed on the drawing; a resistance or a permeance is another layer, and is designed anew.
  const definite = !met && limit.conflict === undefined && BUILT_TO.has(c.dimension);
  return { kind: 'fail', message, at, subject, related, required, provided, sources, correct, ...more, definite };
}

/** A size that a work states, or leaves out. */
export interface StatedSize extends Pick<Comparison, 'limit' | 'sentence' | 'correct'> {
  readonly work: Apply;
  /** Key of the document: `upstand`. */
  readonly field: string;
  readonly size: Measured | undefined;
  /** Ends the sentence `"W" does not say ...`: `how far it turns up the wall`. */
  readonly what: string;
  /** What the check is called; the field when absent. */
  readonly name?: string;
  readonly dimension?: Comparison['dimension'];
}

/** A stated size held against its least value; open when the work does not state it. */
export function statedSize(c: StatedSize): Outcome {
  const subject = `${c.name ?? c.field} of ${c.work.id}`;
  if (c.size === undefined)
    return {
      kind: 'open',
      subject,
      at: c.work.at,
      missing: [`work.${c.field}`],
      message: `"${c.work.id}" does not say ${c.what}; add "${c.field}".`,
    };
  return againstLimit({
    subject,
    at: c.size.at,
    dimension: c.dimension ?? 'length',
    comparison: 'at least',
    provided: c.size.value,
    like: c.size,
    limit: c.limit,
    sentence: c.sentence,
    correct: c.correct,
    missing: [],
  });
}
