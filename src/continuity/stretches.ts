/** Stretches of a line, such as one side of an opening: joined, shared and left over. Millimeters. */

/** From one place on a line to another; `fromMm < toMm`. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Stretches shorter than this are rounding, mm. */
export const TINY_MM = 0.05;

/** Stretches joined where they touch or overlap, in order along the line. */
export function joined(stretches: readonly Stretch[]): Stretch[] {
  const result: { fromMm: number; toMm: number }[] = [];
  for (const s of [...stretches].sort((a, b) => a.fromMm - b.fromMm)) {
    if (s.toMm - s.fromMm <= TINY_MM) continue;
    const last = result.at(-1);
    if (last !== undefined && s.fromMm <= last.toMm + TINY_MM) last.toMm = Math.max(last.toMm, s.toMm);
    else result.push({ ...s });
  }
  return result;
}

/** What is left of a stretch where none of the others lies. */
export function leftOver(whole: Stretch, covered: readonly Stretch[]): Stretch[] {
  const rest: Stretch[] = [];
  let from = whole.fromMm;
  for (const c of joined(covered)) {
    const to = Math.min(c.fromMm, whole.toMm);
    if (to - from > TINY_MM) rest.push({ fromMm: from, toMm: to });
    from = Math.max(from, c.toMm);
  }
  if (whole.toMm - from > TINY_MM) rest.push({ fromMm: from, toMm: whole.toMm });
  return rest;
}

/** Total length of stretches, counted once where they overlap, mm. */
export function totalMm(stretches: readonly Stretch[]): number {
  return joined(stretches).reduce((sum, s) => sum + s.toMm - s.fromMm, 0);
}

/** Where stretches of both sets lie. */
export function shared(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  return joined(
    a.flatMap((x) => b.map((y) => ({ fromMm: Math.max(x.fromMm, y.fromMm), toMm: Math.min(x.toMm, y.toMm) }))),
  );
}
