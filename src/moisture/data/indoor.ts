/** What the standards assume of indoor air when nobody measured it. */
import { standard } from './air.js';

const MEMORY = 'from memory, confirm';

/** Humidity class 1 (dry storage) to 5 (laundry, pool). */
export type HumidityClass = 1 | 2 | 3 | 4 | 5;

/** Vapor pressure that indoor air has above outdoor air, by class; falls with the outdoor temperature. */
export const HUMIDITY_CLASSES = {
  /** Upper limit of the excess in cold weather, Pa. Class 5 has no upper limit; its figure is a nominal one. */
  excessPa: { 1: 270, 2: 540, 3: 810, 4: 1080, 5: 1360 } satisfies Readonly<Record<HumidityClass, number>>,
  use: {
    1: 'unoccupied, dry storage',
    2: 'offices and dwellings with normal occupancy and ventilation',
    3: 'buildings of unknown occupancy',
    4: 'sports halls, kitchens, canteens',
    5: 'laundries, breweries, pools',
  } satisfies Readonly<Record<HumidityClass, string>>,
  /** Outdoor temperature up to which the full excess holds, and at which none is left, degC. */
  fullUpToC: 0,
  noneFromC: 20,
  /** The 2001 edition multiplied the excess by this; whether the 2012 edition does is not confirmed. */
  factor: 1.1,
  source: standard('ISO 13788:2012, Annex A', MEMORY),
} as const;

/** A straight line between two outdoor temperatures, level beyond them. */
export interface Ramp {
  readonly fromC: number;
  readonly toC: number;
  readonly low: number;
  readonly high: number;
}

export interface IndoorCurve {
  readonly temperatureC: Ramp;
  /** Share, not percent. */
  readonly relativeHumidity: Ramp;
  readonly source: ReturnType<typeof standard>;
}

const EN_TEMPERATURE: Ramp = { fromC: 10, toC: 20, low: 20, high: 25 };
const EN_SOURCE = standard('EN 15026, Annex C; ISO 13788:2012, Annex A, alternative', MEMORY);

/** Meant for daily mean outdoor temperatures; a monthly mean is an approximation of them. */
export const INDOOR_CURVES = {
  'EN 15026 normal': {
    temperatureC: EN_TEMPERATURE,
    relativeHumidity: { fromC: -10, toC: 20, low: 0.3, high: 0.6 },
    source: EN_SOURCE,
  },
  'EN 15026 high': {
    temperatureC: EN_TEMPERATURE,
    relativeHumidity: { fromC: -10, toC: 20, low: 0.4, high: 0.7 },
    source: EN_SOURCE,
  },
  // 21.1 degC up to 18.3 outdoors, 2.8 K above outdoors from there, 23.9 degC once cooled: one straight ramp.
  'ASHRAE 160 simplified': {
    temperatureC: { fromC: 18.3, toC: 21.1, low: 21.1, high: 23.9 },
    relativeHumidity: { fromC: -10, toC: 20, low: 0.4, high: 0.7 },
    source: standard('ASHRAE 160, simplified indoor design conditions', MEMORY),
  },
} as const satisfies Readonly<Record<string, IndoorCurve>>;

export type IndoorCurveName = keyof typeof INDOOR_CURVES;
