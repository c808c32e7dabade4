/** Figures of heat and vapor in the units of the author: degF, inHg and oz/ft2, or degC, Pa and g/m2. */
import { formatQuantity } from '../../../quantity/format.js';
import { findUnit } from '../../../quantity/spelling.js';
import { fromBase } from '../../../quantity/units.js';
import { permeanceFromSdNg } from '../../../moisture/resistance.js';
import { ouncesPerSquareFoot } from '../../../moisture/words.js';
import type { System } from '../scale.js';

/** Conventional inch of mercury (NIST SP 811), Pa: the pressure that the perm is made of. */
const INCH_OF_MERCURY_PA = 3386.389;

/** A figure as an axis shows it. */
export interface Scale {
  readonly unit: string;
  /** From the unit of the calculation to the one that is shown. */
  readonly shown: (value: number) => number;
  /** With its unit, rounded for reading. */
  readonly text: (value: number) => string;
  /** As it is shown: what is less says nothing of the wall, and is told as less than this. Absent where all counts. */
  readonly least?: number;
}
export interface MoistureUnits {
  /** Of degC. */
  readonly temperature: Scale;
  /** Of Pa. */
  readonly pressure: Scale;
  /** Of kg/m2. */
  readonly amount: Scale;
  /** Of a still air layer in m: its vapor resistance. */
  readonly vapor: Scale;
  /** Permeance of a still air layer in perm, or the layer itself in m. */
  readonly permeance: (sdM: number) => string;
  /** Of m2 K/W. */
  readonly resistance: (rM2KW: number) => string;
}

/** Three significant digits and no zeros behind them; no decimals from 100 up. */
function three(x: number): string {
  const size = Math.abs(x);
  if (size === 0) return '0';
  const places = Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(size))));
  const text = x.toFixed(places);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A scale whose values are written with three digits, or with a fixed number of decimals. */
function scale(unit: string, shown: Scale['shown'], decimals?: number): Scale {
  return {
    unit,
    shown,
    text: (value) => `${decimals === undefined ? three(shown(value)) : shown(value).toFixed(decimals)} ${unit}`,
  };
}

/** Amounts of water: what is less than a hundredth of an ounce, or than a gram, is an accident of the arithmetic. */
function amount(unit: string, shown: Scale['shown'], least: number): Scale {
  const plain = scale(unit, shown);
  const isLittle = (value: number): boolean => shown(value) > 0 && shown(value) < least;
  return { ...plain, least, text: (value) => (isLittle(value) ? `less than ${least} ${unit}` : plain.text(value)) };
}

const temperature = (system: System): Scale => ({
  unit: system === 'US' ? 'degF' : 'degC',
  shown: (c) => (system === 'US' ? c * 1.8 + 32 : c),
  text: (c) => formatQuantity(c, 'temperature', { system }),
});

const UNITS: Record<System, MoistureUnits> = {
  US: {
    temperature: temperature('US'),
    pressure: scale('inHg', (pa) => pa / INCH_OF_MERCURY_PA, 3),
    amount: amount('oz/ft2', ouncesPerSquareFoot, 0.01),
    vapor: scale('1/perm', (sdM) => (sdM === 0 ? 0 : 1 / permOf(sdM))),
    permeance: (sdM) => formatQuantity(permeanceFromSdNg(sdM), 'permeance', { system: 'US' }),
    resistance: (r) => formatQuantity(r, 'thermalResistance', { system: 'US' }),
  },
  SI: {
    temperature: temperature('SI'),
    pressure: scale('Pa', (pa) => pa, 0),
    amount: amount('g/m2', (kg) => kg * 1000, 1),
    vapor: scale('m', (sdM) => sdM),
    permeance: (sdM) => `${three(sdM)} m`,
    resistance: (r) => formatQuantity(r, 'thermalResistance', { system: 'SI' }),
  },
};

/** Perms of a still air layer. */
function permOf(sdM: number): number {
  const perm = findUnit('perm', 'permeance');
  return perm === undefined ? NaN : fromBase(permeanceFromSdNg(sdM), perm);
}

/** The units of a system. */
export function moistureUnits(system: System): MoistureUnits {
  return UNITS[system];
}
