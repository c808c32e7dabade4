/** Shape of sealant joints: depth for a width, and how much a backer rod is pressed together. */

const IN_MM = 25.4;

/** The published rules disagree, so a rule is chosen by name. */
export const DEPTH_RULES = ['half width', 'equal width'] as const;
export type DepthRule = (typeof DEPTH_RULES)[number];

/** Depths a rule allows for a width, mm; the two ends are equal where it gives one figure. */
export interface DepthRange {
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * Sealant depth for a joint width.
 *
 * `half width`: half the width, not below 1/4 in and not above 1/2 in.
 * `equal width`: the width up to 1/2 in; 1/2 in up to a width of 1 in; 1/2 to 5/8 in beyond.
 *
 * @param widthMm joint width, mm, above zero
 * @throws RangeError when the width is not above zero
 * @see Half width: public project section 07 92 00 and an architectural detailing text (both seen). Equal width:
 * Handbook of Adhesives and Sealants, joint design (seen). ASTM C1193 (from memory, confirm).
 */
export function depthForWidth(rule: DepthRule, widthMm: number): DepthRange {
  if (!(widthMm > 0)) throw new RangeError(`A joint width above zero is expected, in mm; found ${widthMm}.`);
  if (rule === 'half width') {
    const depthMm = Math.min(Math.max(widthMm / 2, IN_MM / 4), IN_MM / 2);
    return { leastMm: depthMm, mostMm: depthMm };
  }
  if (widthMm <= IN_MM / 2) return { leastMm: widthMm, mostMm: widthMm };
  return { leastMm: IN_MM / 2, mostMm: widthMm <= IN_MM ? IN_MM / 2 : (IN_MM * 5) / 8 };
}

/**
 * How much larger a backer rod is than the joint it is pressed into, as a share of the joint width.
 *
 * @param rodMm diameter of the rod, mm
 * @param widthMm joint width, mm, above zero
 * @returns 0.25 for a rod of 5/8 in in a joint of 1/2 in; below zero for a rod that falls through
 * @throws RangeError when the width is not above zero
 */
export function rodCompression(rodMm: number, widthMm: number): number {
  if (!(widthMm > 0)) throw new RangeError(`A joint width above zero is expected, in mm; found ${widthMm}.`);
  return rodMm / widthMm - 1;
}
