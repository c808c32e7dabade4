/**
 * A second solver that shares nothing with the first: the discrete obstacle problem by projected Gauss-Seidel with
 * over-relaxation. Each free plane takes the pressure that balances its two flows, cut down to saturation.
 */
export interface Obstacle {
  readonly sdM: readonly number[];
  readonly ceilingPa: readonly number[];
  readonly wet: ReadonlySet<number>;
}

/** Pressure at every plane, Pa. */
export function relaxedPa({ sdM, ceilingPa, wet }: Obstacle): number[] {
  const n = sdM.length;
  const p = [...ceilingPa];
  const toNext = sdM.slice(0, -1).map((s, k) => 1 / (sdM[k + 1]! - s));
  const omega = 2 / (1 + Math.sin(Math.PI / n));
  for (let sweep = 0; sweep < 2_000_000; sweep++) {
    let moved = 0;
    for (let k = 1; k < n - 1; k++) {
      if (wet.has(k)) continue;
      const [a, b] = [toNext[k - 1]!, toNext[k]!];
      const balanced = (a * p[k - 1]! + b * p[k + 1]!) / (a + b);
      const next = Math.min(ceilingPa[k]!, p[k]! + omega * (balanced - p[k]!));
      moved = Math.max(moved, Math.abs(next - p[k]!));
      p[k] = next;
    }
    if (moved < 1e-11) return p;
  }
  throw new Error('The relaxation did not settle.');
}

/** Rate at which each inner plane gains water, kg/(m2 s), with the permeability of still air handed in. */
export function gainsOf({ sdM }: Obstacle, p: readonly number[], permeability: number): number[] {
  const flow = sdM.slice(0, -1).map((s, k) => (permeability * (p[k]! - p[k + 1]!)) / (sdM[k + 1]! - s));
  return sdM.map((_, k) => (k === 0 || k === sdM.length - 1 ? 0 : flow[k - 1]! - flow[k]!));
}
