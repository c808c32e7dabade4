/** Overlaps in the depth of the wall, read off a section. */
import { damDepthMm, panStrip } from './unit.js';
import type { DepthLap, Run, SealAtDam, Section } from './types.js';

const overlap = (a: Run, b: Run): number => Math.max(0, Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm));

/**
 * Which piece lies outboard of which along the cut, and over what length.
 *
 * @returns one lap for each pair and place (face or return), the inner piece's order of work first
 */
export function depthLaps(section: Section): DepthLap[] {
  const laps: DepthLap[] = [];
  section.strips.forEach((a, i) => {
    for (const b of section.strips.slice(i + 1)) {
      for (const on of ['face', 'return'] as const) {
        const runs = (s: typeof a): Run[] => s.runs.filter((r) => r.on === on);
        const sum = { a: 0, b: 0 };
        for (const x of runs(a)) for (const y of runs(b)) sum[x.level > y.level ? 'a' : 'b'] += overlap(x, y);
        if (sum.a > 0) laps.push({ outer: a.piece, inner: b.piece, on, lapMm: sum.a });
        if (sum.b > 0) laps.push({ outer: b.piece, inner: a.piece, on, lapMm: sum.b });
      }
    }
  });
  return laps;
}

/**
 * Whether the interior seal lands on the back dam of the pan or inboard of it, so that what the pan holds stays
 * outside of the seal.
 *
 * A position the detail declares stands. Else the seal is at the inboard edge of the frame, and where that is follows
 * from a flange on the face and the depth of the frame.
 *
 * @returns `undefined` when the section cuts no pan with a back dam
 */
export function sealAgainstDam(section: Section): SealAtDam | undefined {
  const pan = panStrip(section.strips);
  const damAtMm = damDepthMm(section.strips);
  if (pan === undefined || damAtMm === undefined) return undefined;
  const { unit, interiorSeal: seal } = section;
  const isKnown = unit !== undefined && !unit.assumed.position && !unit.assumed.frameDepth;
  const frameAtMm = isKnown ? -unit.innerMm : undefined;
  const shared = {
    pan: pan.piece,
    damMm: pan.backDamMm ?? 0,
    damAtMm,
    ...(seal === undefined ? {} : { seal: seal.work }),
    ...(frameAtMm === undefined ? {} : { frameAtMm, bridgeMm: Math.max(0, damAtMm - frameAtMm) }),
  };
  if (seal === undefined) return { ...shared, basis: 'not known' };
  switch (seal.place) {
    case 'at back dam':
      return { ...shared, lands: 'at', basis: 'declared' };
    case 'inboard of back dam':
      return { ...shared, lands: 'inboard', basis: 'declared' };
    case 'under unit':
      return { ...shared, lands: 'outboard', basis: 'declared' };
    default: {
      if (frameAtMm === undefined) return { ...shared, basis: 'not known' };
      // The seal takes its own depth at the edge of the frame: touching the dam is landing on it.
      const reach = damAtMm - frameAtMm;
      return { ...shared, lands: reach > seal.depthMm ? 'outboard' : reach < 0 ? 'inboard' : 'at', basis: 'computed' };
    }
  }
}
