/**
 * Anchored masonry veneer: where its cavity is interrupted, and what brings the water out there.
 *
 * Water on the barrier runs down behind the veneer. It sees daylight only where flashing crosses the cavity to the face
 * and weeps stand on it: at the base, over each opening, at each shelf angle.
 */
import { isSpace, shedsWater } from './families.js';
import { remembered } from './remembered.js';
import type { Apply, Detail, Family, Layer, Opening } from './types.js';
import type { Locus } from '../reading/types.js';

export interface Veneer {
  readonly layer: Layer;
  /** Air spaces and drainage mats directly behind it, outermost first; none where it is laid against the wall. */
  readonly spaces: readonly Layer[];
  /** The work that lays it; absent where it is a layer of the drawing only. */
  readonly laidBy?: Apply;
}

/** A place where the cavity ends at its lower side. */
export interface CavityFoot {
  readonly kind: 'base' | 'opening' | 'shelf angle';
  /** `over "window"`, to follow a sentence. */
  readonly name: string;
  readonly at: Locus;
  /** Key of the place where its flashing would be: `lintel`. */
  readonly place: 'base of wall' | 'lintel' | 'shelf angle';
  readonly opening?: Opening;
  /** What leads the water to the face. */
  readonly flashing?: Apply;
  /** The weeps on it, as the flashing states them, or else the veneer. */
  readonly weeps?: { readonly by: Apply; readonly of: NonNullable<Apply['weeps']> };
}

/** How sure it is that the water gets out. */
export interface WayOut {
  readonly state: 'shown' | 'not told' | 'missing';
  /** What is missing or not told: `no flashing leads it to the face`. */
  readonly why: string;
  /** Fields that would tell it. */
  readonly missing: readonly string[];
}

const MASONRY = /\b(brick|masonry|block|stone)s?\b/i;
/** Units that are bonded to the wall and have no cavity of their own. */
const BONDED = /\b(adhered|thin|slips?|tiles?|panels?|precast)\b/i;
/** Thinner masonry is bonded to the wall, mm: 2 in, common practice, no source. */
const THIN_MM = 50;
const BACKING: ReadonlySet<Family> = new Set<Family>([
  'sheathing',
  'insulating sheathing',
  'concrete',
  'masonry',
  'framing',
  'batt insulation',
  'board insulation',
]);

/** The masonry veneer of a wall; `undefined` where the outermost layer is none, or is the wall itself. */
export const anchoredVeneer = remembered((detail: Detail): Veneer | undefined => {
  const layer = detail.layers.at(-1);
  if (layer === undefined || layer.index === 0) return undefined;
  const words = layer.material?.value ?? layer.product?.name ?? '';
  if (!(layer.family === 'masonry' || MASONRY.test(words)) || BONDED.test(words)) return undefined;
  if (layer.thicknessMm !== undefined && layer.thicknessMm.value < THIN_MM) return undefined;
  const inboard = [...detail.layers.slice(0, -1)].reverse();
  const end = inboard.findIndex((l) => !isSpace(l.family));
  const spaces = end < 0 ? [] : inboard.slice(0, end);
  // Solid masonry lined inside has neither a barrier nor a structure behind it that it could be a veneer of.
  const behind = inboard.slice(spaces.length);
  const isVeneer =
    behind.some((l) => shedsWater(l.family) || l.family === 'sheathing' || l.family === 'insulating sheathing') ||
    (spaces.length > 0 && behind.some((l) => BACKING.has(l.family) || l.framing !== undefined));
  if (!isVeneer) return undefined;
  const laidBy = detail.work.find(
    (w): w is Apply => w.action === 'apply' && w.layer === layer && w.places.some((p) => p.value.startsWith('field')),
  );
  return { layer, spaces, ...(laidBy === undefined ? {} : { laidBy }) };
});

/** Flashing that says it runs out: it projects from the face, or has weeps on it. */
const runsOut = (w: Apply): boolean => w.projectsMm !== undefined || w.weeps !== undefined;

const isFlashing = (w: Apply): boolean =>
  w.family !== 'sealant' && (shedsWater(w.family) || w.upstandMm !== undefined || runsOut(w));

function flashingsAt(detail: Detail, place: 'base of wall' | 'lintel' | 'shelf angle' | 'head'): Apply[] {
  return detail.work.filter(
    (w): w is Apply => w.action === 'apply' && isFlashing(w) && w.places.some((p) => p.value === place),
  );
}

/**
 * Flashing of the base that crosses the cavity. A strip that laps onto the foundation stays behind the veneer; metal and
 * flexible flashing, and any that turns up and says nothing of the foundation, is meant to run out.
 */
function baseFlashing(detail: Detail): Apply | undefined {
  const works = flashingsAt(detail, 'base of wall');
  return (
    works.find(runsOut) ??
    works.find(
      (w) =>
        w.family === 'metal flashing' ||
        w.family === 'flexible flashing' ||
        (w.upstandMm !== undefined && w.ontoFoundationMm === undefined),
    )
  );
}

/** True when the detail shows the lower end of the wall: its base, or a roof that it stands over. */
export function showsBase(detail: Detail): boolean {
  if (flashingsAt(detail, 'base of wall').length > 0) return true;
  const edge = detail.edges.find((e) => e.side === 'bottom');
  const ends =
    edge !== undefined &&
    (edge.meets.value === 'foundation' || edge.meets.value === 'grade' || edge.meets.value === 'roof');
  // Another detail that the edge names shows the base.
  return ends && (edge.tieIn === undefined || detail.work.some((w) => w.id === edge.tieIn?.value));
}

/** Flashing over an opening: on its lintel, as head flashing that runs out, or on a shelf angle that carries the veneer. */
function flashingOver(detail: Detail, opening: Opening): Apply | undefined {
  return (
    flashingsAt(detail, 'lintel').find((w) => w.openings.includes(opening)) ??
    flashingsAt(detail, 'head').find((w) => w.openings.includes(opening) && runsOut(w)) ??
    flashingsAt(detail, 'shelf angle')[0]
  );
}

/** Every place of a detail where the cavity of its veneer ends; none where the wall has no anchored veneer. */
export const cavityFeet = remembered((detail: Detail): readonly CavityFoot[] => {
  const veneer = anchoredVeneer(detail);
  if (veneer === undefined) return [];
  const drained = (foot: CavityFoot): CavityFoot => {
    const by = [foot.flashing, veneer.laidBy].find((w) => w?.weeps !== undefined);
    return by?.weeps === undefined ? foot : { ...foot, weeps: { by, of: by.weeps } };
  };
  const withFlashing = (foot: Omit<CavityFoot, 'flashing'>, flashing: Apply | undefined): CavityFoot =>
    drained({ ...foot, ...(flashing === undefined ? {} : { flashing }) });
  const bottom = detail.edges.find((e) => e.side === 'bottom');
  return [
    ...(showsBase(detail)
      ? [
          withFlashing(
            { kind: 'base', name: 'at the base of the wall', at: bottom?.at ?? detail.at, place: 'base of wall' },
            baseFlashing(detail),
          ),
        ]
      : []),
    ...detail.openings.map((opening) =>
      withFlashing(
        { kind: 'opening', name: `over "${opening.id}"`, at: opening.at, place: 'lintel', opening },
        flashingOver(detail, opening),
      ),
    ),
    ...flashingsAt(detail, 'shelf angle').map((work) =>
      withFlashing({ kind: 'shelf angle', name: `at "${work.id}"`, at: work.at, place: 'shelf angle' }, work),
    ),
  ];
});

/**
 * Whether the water gets out at a foot of the cavity.
 *
 * What a detail that lays the veneer does not show is missing. Where the veneer is only a layer, another trade may show
 * it, and so it is a question.
 */
export function wayOut(detail: Detail, foot: CavityFoot): WayOut {
  const absent = anchoredVeneer(detail)?.laidBy === undefined ? 'not told' : 'missing';
  const { flashing, weeps } = foot;
  if (flashing === undefined)
    return { state: absent, why: 'no flashing leads it to the face', missing: [`work.place: ${foot.place}`] };
  if (weeps === undefined || weeps.of.count?.value === 0)
    return {
      state: weeps === undefined ? absent : 'missing',
      why: `no weeps let it out above "${flashing.id}"`,
      missing: ['work.weeps'],
    };
  if (flashing.projectsMm === undefined)
    return {
      state: 'not told',
      why: `"${flashing.id}" does not say that it reaches the face`,
      missing: ['work.projects'],
    };
  return { state: 'shown', why: `through the weeps above "${flashing.id}"`, missing: [] };
}
