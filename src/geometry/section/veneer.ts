/** The lower end of a masonry veneer as it is cut: flashing on the lintel, weeps, the angle that carries it. */
import type { Piece, WallFace } from '../types.js';
import { anchoredVeneer, cavityFeet, type CavityFoot } from '../../model/veneer.js';
import type { Detail, Opening } from '../../model/types.js';
import type { Band, Run, Strip, VeneerFoot } from './types.js';

/** The foot of the cavity that a section at the head of an opening, or at the base, cuts. */
export function footCut(detail: Detail, opening: Opening | undefined): CavityFoot | undefined {
  return cavityFeet(detail).find((f) => (opening === undefined ? f.kind === 'base' : f.opening === opening));
}

/** What is drawn of the veneer at its foot; `undefined` where the wall has none. */
export function veneerFoot(
  detail: Detail,
  bands: readonly Band[],
  foot: CavityFoot | undefined,
): VeneerFoot | undefined {
  const band = bands.find((b) => b.layer === anchoredVeneer(detail)?.layer);
  if (band === undefined || foot === undefined) return undefined;
  const lintel = foot.opening?.lintel?.material.value ?? '';
  return {
    band,
    hasAngle: /\b(angle|steel)\b/i.test(lintel),
    // Weeps stand on flashing; without it there is nothing to stand on.
    ...(foot.weeps === undefined || foot.flashing === undefined ? {} : { weeps: foot.weeps.of }),
  };
}

/** The piece of the flashing on the lintel over an opening; `undefined` for head flashing and shelf angles. */
export function lintelPiece(face: WallFace, foot: CavityFoot | undefined): Piece | undefined {
  const { flashing, opening } = foot ?? {};
  if (flashing?.upstandMm === undefined || !flashing.places.some((p) => p.value === 'lintel')) return undefined;
  return face.piecesOf(flashing.id).find((p) => p.opening === opening);
}

/** A run cut at places along the wall. */
function cutRun(run: Run, cuts: readonly number[]): Run[] {
  const stops = [run.fromMm, ...cuts.filter((c) => c > run.fromMm && c < run.toMm), run.toMm].sort((a, b) => a - b);
  return stops.slice(0, -1).map((fromMm, i) => ({ ...run, fromMm, toMm: stops[i + 1] as number }));
}

/**
 * Puts the upstand of the flashing on a lintel among the strips: outside of all that lies there, but inside of what
 * says that it laps over it.
 *
 * @param heelMm where it leaves the wall, along
 */
export function withUpstand(strips: readonly Strip[], piece: Piece, heelMm: number, toMm: number): Strip[] {
  const { apply } = piece;
  const topMm = Math.min(toMm, heelMm + (apply?.upstandMm?.value ?? 0));
  if (apply === undefined || topMm <= heelMm) return [...strips];
  const isOver = (s: Strip): boolean =>
    s.piece.apply?.lapsOnto.some((l) => l.onto === apply.id) === true && s.piece.work.step > apply.step;
  const onFace = strips.flatMap((s) => s.runs.filter((r) => r.on === 'face'));
  const cuts = [heelMm, topMm, ...onFace.flatMap((r) => [r.fromMm, r.toMm])];
  const within = (r: Run): boolean => r.fromMm >= heelMm && r.toMm <= topMm;
  const parts = strips.map((s) => ({
    strip: s,
    runs: s.runs.flatMap((r) => (r.on === 'face' && r.baseMm === 0 ? cutRun(r, cuts) : [r])),
  }));
  const stops = [...new Set(cuts.filter((c) => c >= heelMm && c <= topMm))].sort((a, b) => a - b);
  const levels = new Map<number, number>();
  const own: Run[] = stops.slice(0, -1).map((fromMm, i) => {
    const here = parts.flatMap(({ strip, runs }) =>
      runs.filter((r) => r.on === 'face' && r.baseMm === 0 && r.fromMm === fromMm).map((run) => ({ strip, run })),
    );
    const over = here.filter((h) => isOver(h.strip)).map((h) => h.run.level);
    const level = over.length > 0 ? Math.min(...over) : Math.max(-1, ...here.map((h) => h.run.level)) + 1;
    levels.set(fromMm, level);
    return { on: 'face', fromMm, toMm: stops[i + 1] as number, level, baseMm: 0 };
  });
  const moved = parts.map(({ strip, runs }) => ({
    ...strip,
    runs: runs.map((r) => {
      const level = levels.get(r.fromMm);
      return r.on === 'face' && r.baseMm === 0 && within(r) && level !== undefined && r.level >= level
        ? { ...r, level: r.level + 1 }
        : r;
    }),
  }));
  const strip: Strip = {
    piece,
    runs: own,
    slope: 0,
    ...(apply.projectsMm === undefined ? {} : { projectsMm: apply.projectsMm.value }),
    overLintel: true,
  };
  return [...moved, strip].sort((a, b) => a.piece.index - b.piece.index);
}
