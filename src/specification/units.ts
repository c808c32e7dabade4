/**
 * Units that sections use for properties no check computes with: forces per width, densities, counts of working days.
 * All others are those of the quantity room.
 */
import { findUnit, dimensionsWith } from '../quantity/spelling.js';
import { toBase } from '../quantity/units.js';
import type { Dimension } from '../quantity/types.js';

/** What kind of value a unit belongs to. */
export type ValueKind =
  | Dimension
  | 'force per width'
  | 'weight or force'
  | 'density'
  | 'content by weight'
  | 'speed'
  | 'long time'
  | 'wave length'
  | 'viscosity'
  | 'weight per area'
  | 'air flow'
  | 'hardness'
  | 'heat transfer'
  | 'share of span'
  | 'count';

/** A unit as read: how it is printed again, what it can measure, and how it converts. */
export interface ReadUnit {
  readonly spelling: string;
  readonly kind: ValueKind;
  readonly system: 'US' | 'SI' | 'either';
  /** The number in the base unit of the kind. */
  toBase(x: number): number;
}

type Row = readonly [spelling: string, factor: number, system: 'US' | 'SI' | 'either', aliases: string];

const POUND_N = 4.4482216152605;
const POUND_KG = 0.45359237;
const INCH_M = 0.0254;

/**
 * Factors follow from the exact definitions of inch, foot, pound and gallon (NIST SP 811). A year is counted as 365.25
 * days and a working day as one day, by convention: such values are compared in their own unit only. The inch of water is the
 * conventional one of 249.082 Pa (NIST SP 811).
 */
const FURTHER: Readonly<Partial<Record<ValueKind, readonly Row[]>>> = {
  'force per width': [
    [
      'lbf/in',
      POUND_N / INCH_M,
      'US',
      'lb/in|lbs/in|lb/inch|lbf/inch|pli|ppi|lb per inch|pounds per inch|lbf per inch|lb/in width|pounds per inch of width|lb/linear inch|lb per in|pound per inch',
    ],
    ['lbf/ft', POUND_N / (12 * INCH_M), 'US', 'lb/ft|plf|lbs/ft|pounds per foot'],
    ['N/m', 1, 'SI', 'newtons per meter|newtons per metre'],
    ['N/mm', 1000, 'SI', 'newtons per millimeter|kn/m'],
    ['N/25 mm', 40, 'SI', 'n/25mm|n per 25 mm|n per 25mm|newtons per 25 mm|newton per 25 mm'],
  ],
  // A roller of 34 kg is one of 75 lb: weights are compared as forces under standard gravity.
  'weight or force': [
    ['kg', 9.80665, 'SI', 'kilogram|kilograms'],
    ['lbf', POUND_N, 'US', 'lb|lbs|pound|pounds|pounds-force|pounds force'],
    ['N', 1, 'SI', 'newton|newtons'],
    ['kN', 1000, 'SI', ''],
  ],
  pressure: [
    ['MPa', 1e6, 'SI', 'megapascals|n/mm2'],
    ['ksi', 1000 * (POUND_N / INCH_M ** 2), 'US', ''],
    [
      'inH2O',
      249.082,
      'US',
      'inches water gauge|inch water gauge|in water gauge|inches water|inches of water gauge|in of water gauge|inches wg|inches wc|inches water column|inches of water column',
    ],
  ],
  density: [
    ['lb/ft3', POUND_KG / 0.3048 ** 3, 'US', 'pcf|lb/cubic foot|lb/cu ft|lbs/ft3|lb/cf|pounds per cubic foot'],
    ['kg/m3', 1, 'SI', 'kilograms per cubic meter|kg/cubic meter|kg/cu m|kg per m3'],
    ['g/cm3', 1000, 'SI', 'g/cc|grams per cubic centimeter'],
  ],
  'content by weight': [
    ['g/L', 1, 'SI', 'grams per liter|g/l|gm/l|grams/liter|g per l'],
    ['lb/gal', (POUND_KG * 1000) / 3.785411784, 'US', 'pounds per gallon|lbs/gal'],
  ],
  speed: [
    ['mph', 0.44704, 'US', 'miles per hour|mi/h'],
    ['m/s', 1, 'SI', 'meters per second|m per s'],
    ['km/h', 1 / 3.6, 'SI', 'kph|kilometers per hour'],
  ],
  'long time': [
    ['years', 365.25 * 86400, 'either', 'year|yr|yrs'],
    ['working days', 86400, 'either', 'working day|business days|business day|workdays|work days'],
    ['calendar days', 86400, 'either', 'calendar day'],
  ],
  'wave length': [['nm', 1, 'SI', 'nanometers']],
  viscosity: [['cP', 1, 'SI', 'cps|centipoise|centipoises']],
  'weight per area': [
    ['oz/yd2', 0.028349523125 / 0.83612736, 'US', 'oz/sq yd|ounces per square yard|oz per sq yd|oz/sy'],
    ['lb/ft2', POUND_KG / 0.09290304, 'US', 'lb/sq ft'],
    ['g/m2', 0.001, 'SI', 'gsm|grams per square meter|g/sq m'],
  ],
  'air flow': [
    ['cfm', 0.47194745, 'US', 'cubic feet per minute'],
    ['L/s', 1, 'SI', 'liters per second|l per s'],
  ],
  'heat transfer': [
    [
      'Btu/(h ft2 degF)',
      1055.05585262 / (3600 * 0.3048 ** 2 * (5 / 9)),
      'US',
      'btu/(h sq ft f)|btu/(hr sq ft f)|btu/(h ft2 f)|btu/(h sq ft deg f)|btu/h sq ft f|btu/hr sq ft f|btu/h ft2 f',
    ],
    ['W/(m2 K)', 1, 'SI', 'w/m2 k|w/(sq m k)|w/sq m k'],
  ],
  hardness: [['Shore A', 1, 'either', 'shore a hardness|shore a durometer|durometer shore a']],
};

const key = (written: string): string => written.toLowerCase().replaceAll('.', '').replace(/\s+/g, ' ').trim();

const BY_KEY = new Map<string, ReadUnit>();
for (const [kind, rows] of Object.entries(FURTHER) as [ValueKind, readonly Row[]][]) {
  for (const [spelling, factor, system, aliases] of rows) {
    const unit: ReadUnit = { spelling, kind, system, toBase: (x) => x * factor };
    for (const name of [spelling, ...aliases.split('|')]) if (name !== '') BY_KEY.set(key(name), unit);
  }
}

/**
 * What a spelling can mean: none, one, or several units of different kinds (`%`, `mm` of length or of film).
 *
 * @param written as it stands in the text, without the number
 */
export function unitsNamed(written: string): readonly ReadUnit[] {
  const known = memory.get(written);
  if (known !== undefined) return known;
  const units = lookUp(written);
  if (memory.size >= REMEMBERED) memory.clear();
  memory.set(written, units);
  return units;
}

/** The words behind numbers are the same few in a section; looking them up goes through every kind of unit. */
const REMEMBERED = 4096;
const memory = new Map<string, readonly ReadUnit[]>();

function lookUp(written: string): readonly ReadUnit[] {
  const further = BY_KEY.get(key(written));
  // Factors are also joined by a letter: `L/s x sq. m`.
  const plain = written
    .replaceAll('•', '·')
    .replace(/ x (?=\S)/gi, ' ')
    .replace(/^(?:linear|lineal|running) (?=f(?:oo|ee)?t\b|m\b|met(?:er|re)s?\b|yards?\b)/i, '');
  const dimensions = dimensionsWith(plain);
  // `lb/ft2` is a pressure wherever a section uses it; the quantity room reads it so.
  const known = dimensions.flatMap((dimension): ReadUnit[] => {
    const unit = findUnit(plain, dimension);
    if (unit === undefined) return [];
    return [{ spelling: unit.spelling, kind: dimension, system: unit.system, toBase: (x) => toBase(x, unit) }];
  });
  if (known.length > 0) return known;
  return further === undefined ? [] : [further];
}
