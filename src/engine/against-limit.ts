/** The outcome of holding one provided value against the limit that governs: the shape most rules need. */
import type { Limit } from './limits.js';
import type { Outcome } from './result.js';
import { BASE_UNITS, type Dimension, type Quantity } from '../quantity/types.js';
import { formatQuantity } from '../quantity/format.js';
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

/** Writes a value of a dimension; counts are written bare. */
export function written(
  value: number,
  dimension: Dimension | 'count',
  like?: Pick<Quantity, 'unit' | 'system'>,
): string {
  if (dimension === 'count') return String(value);
  return formatQuantity(value, dimension, like ?? (BASE_UNITS[dimension] === 'mm' ? { system: 'US' } : undefined));
}

function isMet(c: Comparison, limit: Limit): boolean {
  const tolerance = TOLERANCE[c.dimension] ?? Math.abs(limit.value) * 1e-6;
  return c.comparison === 'at least' ? c.provided >= limit.value - tolerance : c.provided <= limit.value + tolerance;
}

/** `pass`, `fail` or, without a limit, `open`. */
export function againstLimit(c: Comparison): Outcome {
  const plain = written(c.provided, c.dimension, c.like);
  // A breach smaller than the rounding of the printed value would read as `4 in, at least 4 in`.
  const close =
    c.limit !== undefined &&
    c.dimension !== 'count' &&
    !isMet(c, c.limit) &&
    plain === written(c.limit.value, c.dimension, c.like);
  const exact = close ? ` (${Number(c.provided.toPrecision(6))} ${BASE_UNITS[c.dimension]})` : '';
  const provided = `${plain}${exact}${c.remark === undefined ? '' : ` ${c.remark}`}`;
  const base = { at: c.at, subject: c.subject, ...(c.related === undefined ? {} : { related: c.related }) };
  if (c.limit === undefined) {
    return {
      kind: 'open',
      message: `${c.sentence(provided)}; no document in reach says how much is required.`,
      ...base,
      provided,
      missing: c.missing,
    };
  }
  const { limit } = c;
  const met = isMet(c, limit);
  const required = `${c.comparison} ${limit.text}`;
  const clash =
    limit.conflict === undefined
      ? ''
      : ` ${limit.conflict.source.citation} asks for ${c.comparison === 'at least' ? 'no more' : 'no less'} than ${limit.conflict.text}: no value meets both, ask which governs.`;
  const shared = {
    ...base,
    required,
    provided,
    sources: [
      limit.source,
      ...limit.others.map((o) => o.source),
      ...(limit.conflict === undefined ? [] : [limit.conflict.source]),
    ],
  };
  const message = `${c.sentence(provided)}; ${required} is required (${limit.source.citation}).${clash}`;
  return met && limit.conflict === undefined
    ? { kind: 'pass', message, ...shared }
    : {
        kind: 'fail',
        message,
        correct: met ? 'Have the designer settle which document governs, and state one value.' : c.correct(required),
        ...shared,
      };
}
