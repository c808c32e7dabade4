/** What the pictures of heat and vapor are made from: the wall that was followed, layer by layer. */
import { layerBands } from '../../../geometry/section/bands.js';
import type { MoistureLayer, Plane } from '../../../moisture/resistance.js';
import type { LayerFigures } from '../../../moisture/wall/figures.js';
import { wallYearOf, type WallNotFollowed, type WallYear } from '../../../moisture/wall/of-detail.js';
import type { JudgedYear } from '../../../moisture/wall/judge.js';
import type { Detail } from '../../../model/types.js';
import { systemOf, type DrawingSubject } from '../subject.js';
import { moistureUnits, type MoistureUnits } from './units.js';

/** A layer that was counted, or its finish. */
export interface CountedLayer {
  /** From 1, inside to outside; keys the picture to its table. */
  readonly number: number;
  readonly figures: LayerFigures;
  readonly moisture: MoistureLayer;
  /** Planes of its inner and outer face. */
  readonly first: Plane;
  readonly last: Plane;
  /** Zero for finishes, films and coats, whose thickness does not count. */
  readonly thicknessMm: number;
  /** True where no document gives the thickness and a usual one is drawn. */
  readonly supposed: boolean;
}

export interface Followed {
  readonly detail: Detail;
  readonly wallYear: WallYear;
  readonly judged: JudgedYear;
  readonly layers: readonly CountedLayer[];
  readonly units: MoistureUnits;
  readonly system: 'US' | 'SI';
}

/** Why the wall of a detail is not followed, as a sentence; `undefined` when it is. */
export function whyNotFollowed(detail: Detail): string | undefined {
  const found = wallYearOf(detail);
  return found.kind === 'followed' ? undefined : notFollowedText(found);
}

function notFollowedText({ reason, missing }: WallNotFollowed): string {
  return `The wall is not followed through the year: ${reason}. Missing: ${missing.join(', ')}.`;
}

/**
 * The wall of a detail as its pictures need it, with the figures halfway between what its documents leave open.
 *
 * @throws RangeError that names what is missing, when the wall cannot be followed
 */
export function followed(subject: DrawingSubject): Followed {
  const { detail, face } = subject;
  const wallYear = wallYearOf(detail);
  if (wallYear.kind !== 'followed') throw new RangeError(notFollowedText(wallYear));
  const judged = wallYear.judgement.typical;
  const { planes } = judged.year.section;
  const bands = layerBands(detail, face);
  const layers = judged.wall.layers.flatMap((figures, i): Omit<CountedLayer, 'number'>[] => {
    const moisture = judged.layers[i];
    const first = planes.find((p) => p.outer === moisture);
    const last = planes.findLast((p) => p.inner === moisture);
    if (moisture === undefined || first === undefined || last === undefined) return [];
    const band = bands.find((b) => b.layer === figures.layer);
    const isFinish = figures.id !== figures.layer.id;
    return [
      {
        figures,
        moisture,
        first,
        last,
        thicknessMm: isFinish || band === undefined ? 0 : band.outerMm - band.innerMm,
        supposed: !isFinish && band?.assumed === true,
      },
    ];
  });
  const system = systemOf(detail);
  return {
    detail,
    wallYear,
    judged,
    layers: layers.map((layer, i) => ({ ...layer, number: i + 1 })),
    units: moistureUnits(system),
    system,
  };
}

/** What lies outside of the wall that was followed. */
export function outsideText({ judged }: Followed): string {
  return judged.wall.endsAt === undefined ? 'outdoor air' : `air of "${judged.wall.endsAt.id}", as outdoors`;
}

/** Told where figures that no document gives decide whether the wall is sound; else empty. */
export function hangsText({ wallYear }: Followed): string {
  const { kind, hangsOn } = wallYear.judgement;
  return kind === 'undecided'
    ? `Drawn with figures halfway between their bounds; whether the wall is sound depends on ${hangsOn.join(', ')}.`
    : '';
}

/**
 * The small print: what was assumed, and what the method leaves out with its caution.
 *
 * @param ofTheDrawing a sentence on how it is drawn
 * @returns paragraphs
 */
export function smallPrint({ wallYear, judged }: Followed, ofTheDrawing?: string): string[] {
  const drawn =
    judged.wall.endsAt === undefined
      ? 'Drawn with all its layers.'
      : `Drawn up to "${judged.wall.endsAt.id}", whose air is taken to be as outdoors.`;
  return [
    drawn,
    ...(ofTheDrawing === undefined ? [] : [ofTheDrawing]),
    ...wallYear.assumptions,
    'Steady heat and vapor through resistances in series (ISO 6946, from memory, confirm), month by month (ISO 13788, from memory, confirm).',
    'Figures that documents leave open are drawn halfway between their bounds.',
    ...judged.year.leftOut,
  ];
}
