/** Thermal surface resistances by the question asked. Vapor resistances of surfaces are neglected. */
import type { CodeSource } from '../../vapor/data/code-source.js';
import { standard } from './air.js';

export interface Surfaces {
  readonly insideM2KW: number;
  readonly outsideM2KW: number;
}
export const SURFACE_USES = ['interstitial', 'mould', 'glazing', 'period'] as const;
/** `interstitial`: monthly condensation in a wall. `mould`: opaque surfaces. `period`: the two-period method. */
export type SurfaceUse = (typeof SURFACE_USES)[number];

const ISO = standard('ISO 13788:2012, surface resistances', 'from memory, confirm');

export const SURFACE_RESISTANCES: Readonly<Record<SurfaceUse, Surfaces & { readonly source: CodeSource }>> = {
  // For flow through a wall, sideways; 0.10 holds upward and 0.17 downward.
  interstitial: { insideM2KW: 0.13, outsideM2KW: 0.04, source: ISO },
  // Furniture and curtains slow the air at a wall: a larger resistance, a colder surface.
  mould: { insideM2KW: 0.25, outsideM2KW: 0.04, source: ISO },
  glazing: { insideM2KW: 0.13, outsideM2KW: 0.04, source: ISO },
  period: {
    insideM2KW: 0.25,
    outsideM2KW: 0.04,
    source: standard('DIN 4108-3, period method', 'seen at second hand'),
  },
};
