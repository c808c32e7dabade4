/** How much water, and how damp a surface, the standards accept. Limits are national; none holds everywhere. */
import type { CodeSource } from '../vapor/data/code-source.js';
import { standard } from './data/air.js';
import type { MoistureLayer, Plane, StorageClass } from './resistance.js';

const AT_SECOND_HAND = 'seen at second hand';
const MEMORY = 'from memory, confirm';
const DIN = standard('DIN 4108-3, amounts of condensate', AT_SECOND_HAND);

export type AmountFamily = 'DIN 4108-3' | 'OENORM B 8110-2' | 'recurring';

/** A limit on the water at one plane. */
export interface AmountRule {
  readonly family: AmountFamily;
  /** Applies when a layer that meets the plane is of this class; to every plane when absent. */
  readonly beside?: StorageClass;
  /** Either an amount, or a share of the dry mass of the layer beside. */
  readonly mostKgPerM2?: number;
  readonly shareOfMass?: number;
  readonly note?: string;
  readonly source: CodeSource;
}

export const AMOUNT_RULES: readonly AmountRule[] = [
  { family: 'DIN 4108-3', mostKgPerM2: 1, source: DIN },
  { family: 'DIN 4108-3', beside: 'non-absorbing', mostKgPerM2: 0.5, source: DIN },
  { family: 'DIN 4108-3', beside: 'wood', shareOfMass: 0.05, source: DIN },
  { family: 'DIN 4108-3', beside: 'wood panel', shareOfMass: 0.03, source: DIN },
  {
    family: 'OENORM B 8110-2',
    mostKgPerM2: 0.5,
    note: 'and dry in the first summer, or in the second if water built in is counted',
    source: standard('OENORM B 8110-2:2020', AT_SECOND_HAND),
  },
  {
    family: 'recurring',
    beside: 'non-absorbing',
    mostKgPerM2: 0.2,
    note: 'about where water begins to run off',
    source: standard('National annexes to ISO 13788, which itself sets no limit', MEMORY),
  },
];

/** What timber construction should be able to dry beyond what condenses, kg/m2 in the drying period. */
export const DRYING_RESERVE = { timberKgPerM2: 0.25, source: standard('DIN 4108-3, drying reserve', AT_SECOND_HAND) };

export interface AmountLimit {
  readonly rule: AmountRule;
  /** Absent when the limit is a share of a mass that is not known. */
  readonly mostKgPerM2?: number;
  /** Layer that the limit protects. */
  readonly layer?: MoistureLayer;
}

/**
 * Limits on the water at a plane, the strictest known first, those that lack a mass last.
 *
 * A limit without `mostKgPerM2` leaves the question open: name `areaMassKgPerM2` of its layer.
 * @see AMOUNT_RULES
 */
export function amountLimits(plane: Plane, family: AmountFamily = 'DIN 4108-3'): AmountLimit[] {
  const beside = [...new Set([plane.inner, plane.outer])].filter((l): l is MoistureLayer => l !== undefined);
  return AMOUNT_RULES.filter((rule) => rule.family === family)
    .flatMap((rule): AmountLimit[] => {
      if (rule.beside === undefined) return [{ rule, ...known(rule.mostKgPerM2) }];
      return beside
        .filter((layer) => layer.storage === rule.beside)
        .map((layer) => ({ rule, layer, ...known(amountFor(rule, layer)) }));
    })
    .sort((a, b) => (a.mostKgPerM2 ?? Infinity) - (b.mostKgPerM2 ?? Infinity));
}

function amountFor(rule: AmountRule, layer: MoistureLayer): number | undefined {
  if (rule.shareOfMass === undefined) return rule.mostKgPerM2;
  return layer.areaMassKgPerM2 === undefined ? undefined : rule.shareOfMass * layer.areaMassKgPerM2;
}

const known = (mostKgPerM2: number | undefined): Pick<AmountLimit, 'mostKgPerM2'> =>
  mostKgPerM2 === undefined ? {} : { mostKgPerM2 };

/** Greatest relative humidity against the inside surface, as a monthly mean. */
export interface SurfaceLimit {
  readonly mostHumidity: number;
  /** Surface temperatures at which it applies, degC; all when absent. */
  readonly betweenC?: readonly [least: number, most: number];
  readonly source: CodeSource;
}

/** By what is to be kept off the surface. */
export const SURFACE_LIMITS = {
  mould: { mostHumidity: 0.8, source: standard('ISO 13788:2012, mould growth', MEMORY) },
  condensation: { mostHumidity: 1, source: standard('ISO 13788:2012, surface condensation', MEMORY) },
  corrosion: { mostHumidity: 0.6, source: standard('ISO 13788:2012, corrosion', MEMORY) },
  'mould, 30-day mean': {
    mostHumidity: 0.8,
    betweenC: [5, 40],
    source: standard('ASHRAE 160-2009; replaced by a mould index from 2016 on', MEMORY),
  },
} as const satisfies Readonly<Record<string, SurfaceLimit>>;

/** Least temperature factor of the inside surface that national rules ask for, whatever the climate. */
export const FACTOR_LIMITS = {
  'DIN 4108-2': { leastFactor: 0.7, source: standard('DIN 4108-2, 20 degC and 50 % inside, -5 degC outside', MEMORY) },
  'UK dwellings': { leastFactor: 0.75, source: standard('UK practice for dwellings', MEMORY) },
} as const satisfies Readonly<Record<string, { leastFactor: number; source: CodeSource }>>;
