/**
 * The units Lapwright reads, as data: how each is spelled, how it converts and where its constant comes from.
 *
 * A factor is kept as `factor / divisor` with whole numbers where the definition allows, so that the same length
 * written in two ways (`1 ft`, `12 in`, `304.8 mm`) gives the same binary number.
 */
import type { Dimension, Quantity } from './types.js';

export interface Unit {
  readonly spelling: string;
  readonly dimension: Dimension;
  readonly system: Quantity['system'];
  /** base = (x + offset) * factor / divisor; degrees of slope go through the tangent instead. */
  readonly factor: number;
  readonly divisor: number;
  readonly offset: number;
  readonly tangent: boolean;
  /** Further spellings; plurals, dots, powers and the order of factors are taken care of in spelling.ts. */
  readonly aliases: readonly string[];
  /** Where the constant comes from, with its provenance. */
  readonly source: string;
}

const SI = 'Exact: SI prefix or definition (SI brochure).';
const INCH = 'Exact: inch of 25.4 mm, and the foot, yard and mil that follow from it (NIST SP 811).';
const GALLON = 'Exact: US gallon of 231 cubic inches (NIST SP 811).';
const POUND =
  'Exact definitions: pound-force 4.4482216152605 N (pound 0.45359237 kg, standard gravity 9.80665 m/s2), ' +
  'inch 25.4 mm (NIST SP 811).';
const WATER = 'NIST SP 811: conventional inch of water at 4 degC, 249.082 Pa.';
const PERM =
  'NIST SP 811: perm at 0 degC, 5.72135e-11 kg/(Pa s m2), seen in a secondary listing and derived again from grain, ' +
  'square foot and inch of mercury at 0 degC. At 23 degC the perm is 0.4 % larger.';
const PERM_INCH = 'NIST SP 811: perm-inch at 0 degC, 1.45322e-12 kg/(Pa s m), seen in a secondary listing.';
const METRIC_PERM =
  'Derived: 1 g per 24 h, m2 and mmHg, with the conventional mmHg of 133.322387 Pa (from memory, confirm).';
const R_VALUE = 'International table Btu 1055.05585262 J, foot 0.3048 m: 0.1761102 m2 K/W (NIST SP 811).';
const FAHRENHEIT = 'Exact: (t - 32) / 1.8 (NIST SP 811).';
const PERCENT = 'Exact: hundredth part.';
const TANGENT = 'Exact: rise over run is the tangent of the angle.';
const CALENDAR =
  'Mean month of the Julian year, 365.25 d / 12 = 30.4375 d (a convention; write days where the day counts).';
const PER_AREA = 'Exact: follows from the foot of 0.3048 m and the minute of 60 s.';
const COVERAGE = 'Exact: square foot over US gallon (NIST SP 811).';

/** Pound-force in newtons times inverse square inch: 4.4482216152605 / 0.0254^2. */
const PSI_PA = 4.4482216152605 / 0.00064516;

type Row = readonly [spelling: string, factor: number, divisor: number, source: string, ...aliases: string[]];
type Table = Readonly<Record<Dimension, Partial<Record<Quantity['system'], readonly Row[]>>>>;

/** Within a dimension and system the first unit is the one a value is printed in unless the author used another. */
const TABLE: Table = {
  length: {
    US: [
      ['in', 254, 10, INCH],
      ['ft', 3048, 10, INCH],
      ['yd', 9144, 10, INCH],
    ],
    SI: [
      ['mm', 1, 1, SI],
      ['cm', 10, 1, SI],
      ['m', 1000, 1, SI],
    ],
  },
  area: {
    US: [
      ['ft2', 9290304, 1e8, INCH],
      ['in2', 64516, 1e8, INCH],
    ],
    SI: [
      ['m2', 1, 1, SI],
      ['cm2', 1, 1e4, SI],
    ],
  },
  film: {
    US: [
      ['mil', 254, 10, INCH],
      ['in', 25400, 1, INCH],
    ],
    SI: [
      ['um', 1, 1, SI],
      ['mm', 1000, 1, SI],
    ],
  },
  slope: {
    either: [
      ['%', 1, 100, PERCENT],
      ['deg', 1, 1, TANGENT],
      ['rise:run', 1, 1, 'Exact: the ratio itself.'],
    ],
    US: [['in/ft', 1, 12, INCH]],
    SI: [['mm/m', 1, 1000, SI]],
  },
  permeance: {
    US: [
      [
        'perm',
        572135,
        1e4,
        PERM,
        'us perm',
        'gr/(h ft2 inHg)',
        'grain/(h ft2 inHg)',
        'gr/(h ft2 in Hg)',
        'grain/(h ft2 in Hg)',
      ],
    ],
    SI: [
      ['ng/(Pa s m2)', 1, 1, SI],
      ['kg/(Pa s m2)', 1e12, 1, SI],
      ['metric perm', 1e9, 86400 * 133.322387415, METRIC_PERM, 'g/(24 h m2 mmHg)', 'g/(d m2 mmHg)'],
    ],
  },
  permeability: {
    US: [['perm-in', 145322, 1e5, PERM_INCH]],
    SI: [
      ['ng/(Pa s m)', 1, 1, SI],
      ['kg/(Pa s m)', 1e12, 1, SI],
    ],
  },
  thermalResistance: {
    US: [
      ['R', 0.3048 ** 2 * 3600, 1.8 * 1055.05585262, R_VALUE, 'r value'],
      ['ft2 h degF/Btu', 0.3048 ** 2 * 3600, 1.8 * 1055.05585262, R_VALUE],
    ],
    SI: [
      ['RSI', 1, 1, SI],
      ['m2 K/W', 1, 1, SI, 'm2k/w', 'm2 degC/W'],
    ],
  },
  pressure: {
    US: [
      ['psf', PSI_PA, 144, POUND, 'lb/ft2', 'lbf/ft2'],
      ['psi', PSI_PA, 1, POUND, 'lb/in2', 'lbf/in2'],
      ['inH2O', 249.082, 1, WATER, 'in h2o', 'in w g', 'in wg', 'in w c', 'in wc', 'in of water'],
    ],
    SI: [
      ['Pa', 1, 1, SI, 'pascal', 'pascals'],
      ['kPa', 1000, 1, SI],
    ],
  },
  temperature: {
    US: [['degF', 5, 9, FAHRENHEIT]],
    SI: [['degC', 1, 1, SI]],
  },
  temperatureDifference: {
    US: [['degF', 5, 9, FAHRENHEIT, 'F deg']],
    SI: [
      ['K', 1, 1, SI, 'kelvin'],
      ['degC', 1, 1, SI, 'C deg'],
    ],
  },
  time: {
    either: [
      ['h', 3600, 1, SI],
      ['min', 60, 1, SI],
      ['d', 86400, 1, SI],
      ['s', 1, 1, SI],
      ['wk', 604800, 1, SI],
      ['month', 2629800, 1, CALENDAR],
    ],
  },
  volume: {
    US: [
      ['gal', 3785411784, 1e9, GALLON],
      ['qt', 3785411784, 4e9, GALLON],
      ['fl oz', 3785411784, 128e9, GALLON],
      ['ft3', 28316846592, 1e9, INCH],
    ],
    SI: [
      ['L', 1, 1, SI],
      ['mL', 1, 1000, SI],
      ['m3', 1000, 1, SI],
    ],
  },
  movement: { either: [['%', 1, 100, PERCENT]] },
  airLeakage: {
    US: [['cfm/ft2', 508, 100, PER_AREA, 'ft3/(min ft2)']],
    SI: [['L/(s m2)', 1, 1, SI]],
  },
  fraction: { either: [['%', 1, 100, PERCENT]] },
  coverage: {
    US: [['ft2/gal', 92.90304, 3.785411784 * 1000, COVERAGE]],
    SI: [['m2/L', 1, 1, SI]],
  },
};

export const DIMENSIONS = Object.keys(TABLE) as readonly Dimension[];

const OFFSETS: Readonly<Record<string, number>> = { 'temperature degF': -32 };

const UNITS = new Map<Dimension, readonly Unit[]>(
  DIMENSIONS.map((dimension) => [
    dimension,
    (['either', 'US', 'SI'] as const).flatMap((system) =>
      (TABLE[dimension][system] ?? []).map(([spelling, factor, divisor, source, ...aliases]) => ({
        spelling,
        dimension,
        system,
        factor,
        divisor,
        offset: OFFSETS[`${dimension} ${spelling}`] ?? 0,
        tangent: source === TANGENT,
        aliases,
        source,
      })),
    ),
  ]),
);

/** All units of a dimension, commonest first within each system (units of neither system, then US, then SI). */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return UNITS.get(dimension) ?? [];
}

/**
 * A number in a unit, converted to the base unit of the unit's dimension.
 * @see the `source` of the unit for its constant
 */
export function toBase(x: number, unit: Unit): number {
  if (unit.tangent) return Math.tan((x * Math.PI) / 180);
  return ((x + unit.offset) * unit.factor) / unit.divisor;
}

/** The inverse of {@link toBase}: from the base unit of the dimension to a number in `unit`. */
export function fromBase(base: number, unit: Unit): number {
  if (unit.tangent) return (Math.atan(base) * 180) / Math.PI;
  return (base * unit.divisor) / unit.factor - unit.offset;
}
