/** Which part of the design wind pressure drives rain, and whether a cavity takes the rest off it. */
import { isSpace } from '../model/families.js';
import { fieldOfLayer } from '../model/named-field.js';
import type { Detail, Layer } from '../model/types.js';

/**
 * Share of the design wind pressure at which water is held off, and why. A peak gust and rain at its heaviest do not
 * come together; units are water tested at this share (classes R, LC and CW).
 */
export const RAIN_SHARE = {
  text: '15 %',
  source: {
    basis: 'standard' as const,
    citation: 'North American Fenestration Standard, water tested at 15 % of the design pressure',
    provenance: 'seen at second hand' as const,
    url: 'https://fgiaonline.org/resources/technical-resources/performance-class-overview/',
  },
};

/** The cavity behind the cladding, and whether it is open to drain or to air. */
export interface OuterCavity {
  /** `closed` also where there is none. */
  readonly state: 'open' | 'closed' | 'not told';
  readonly layer?: Layer;
  /** Fields that would tell it. */
  readonly missing: readonly string[];
}

/** The outermost air space or drainage mat that has cladding before it: open when it is drained or vented. */
export function outerCavity(detail: Pick<Detail, 'layers'>): OuterCavity {
  const layer = [...detail.layers.slice(0, -1)].reverse().find((l) => isSpace(l.family));
  if (layer === undefined) return { state: 'closed', missing: [] };
  const told = { drained: layer.drained?.value, vented: layer.vented?.value };
  if (told.drained === true || told.vented === true) return { state: 'open', layer, missing: [] };
  const missing = (['drained', 'vented'] as const)
    .filter((field) => told[field] === undefined)
    .map((field) => fieldOfLayer(layer, field));
  return { state: missing.length === 0 ? 'closed' : 'not told', layer, missing };
}

/** `15 % of the design pressure 30 psf`. */
export function shareOfDesign(share: number, pressureText: string): string {
  return `${Number((share * 100).toPrecision(3))} % of the design pressure ${pressureText}`;
}
