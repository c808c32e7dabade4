/** How a wall is balanced about its frame: vapor resistance inside and outside, thermal resistance outside. */
import type { MoistureLayer } from '../resistance.js';
import { dryingReserve, type DryingReserve } from '../drying.js';
import type { MonthOfAir } from '../interior-climate.js';
import type { LayerFigures } from './figures.js';
import { extremes, typicalLayers } from './judge.js';
import type { Wall } from './wall.js';
import { classOfLayer } from '../../vapor/layer-class.js';
import { materialNamed } from '../../vapor/materials.js';
import type { Detail, Layer } from '../../model/types.js';

export interface Balance {
  /** Still air layers on the room side of the frame's fill and outside of it, m. */
  readonly insideSdM: number;
  readonly outsideSdM: number;
  /** Thermal resistance outside of the frame, and of all layers, m2 K/W. */
  readonly outsideM2KW: number;
  readonly totalM2KW: number;
}

/** Sums of a wall about its frame; the facing of the frame's batts counts inside, the fill itself on neither side. */
export function balanceOf(wall: Wall, layers: readonly MoistureLayer[], frame: Layer): Balance {
  let [insideSdM, outsideSdM, outsideM2KW, totalM2KW] = [0, 0, 0, 0];
  for (const [i, { layer, id }] of wall.layers.entries()) {
    const figures = layers[i];
    if (figures === undefined) continue;
    const sdM = 'sdM' in figures ? figures.sdM : 0;
    totalM2KW += figures.rM2KW;
    if (layer.index > frame.index) {
      outsideSdM += sdM;
      outsideM2KW += figures.rM2KW;
    } else if (layer !== frame || id !== frame.id) insideSdM += sdM;
  }
  return { insideSdM, outsideSdM, outsideM2KW, totalM2KW };
}

/** Kinds that stand outside the sheathing and may be tight; boards and claddings are judged by what they let through. */
const OUTBOARD: ReadonlySet<Layer['family']> = new Set<Layer['family']>([
  'fluid-applied membrane',
  'self-adhered membrane',
  'mechanically fastened sheet',
  'building paper',
  'insulating sheathing',
  'board insulation',
  'vapor retarder',
  'spray foam',
]);

export interface TightLayer {
  readonly layer: Layer;
  readonly vaporClass: 'I' | 'II';
  readonly words: string;
}

/** The first membrane or insulation outside the frame, within the wall as followed, that is of class I or II. */
export function tightOutside(wall: Wall, frame: Layer): TightLayer | undefined {
  for (const { layer } of wall.layers) {
    if (layer.index <= frame.index || !OUTBOARD.has(layer.family)) continue;
    const found = classOfLayer(layer);
    if (found.kind === 'known' && (found.vaporClass === 'I' || found.vaporClass === 'II'))
      return { layer, vaporClass: found.vaporClass, words: found.words };
  }
  return undefined;
}

/** A responsive layer is taken as open as it gets when damp, for that is when the wall dries through it. */
function whenDamp(figures: LayerFigures | undefined, layer: MoistureLayer): MoistureLayer {
  const responsive =
    figures?.layer.product?.responsive?.value === true ||
    materialNamed(figures?.layer.material?.value ?? '')?.responsive === true;
  return responsive && figures !== undefined ? { ...layer, sdM: figures.wet.typicalM } : layer;
}

/** What the wall could dry if the inner face of a layer were wet: figures halfway first, then both ends of their span. */
export function reserves(wall: Wall, year: readonly MonthOfAir[], wetBehind: string): DryingReserve[] {
  return [typicalLayers(wall, year), ...extremes(wall, year)].map((layers) =>
    dryingReserve(
      layers.map((l, i) => whenDamp(wall.layers[i], l)),
      year,
      wetBehind,
      wall.surfaces,
    ),
  );
}

/** Fields whose generic figures span the answer. */
export function genericFields(wall: Wall): string[] {
  return [...new Set(wall.layers.flatMap((l) => (l.generic && l.dry.leastM < l.dry.mostM ? [l.field] : [])))];
}

/** A wall with a strip of flashing on the outside of its sheathing. */
export function withStrip(wall: Wall, detail: Detail, frame: Layer, sdM: number): { wall: Wall; id: string } {
  const sheathing = detail.layers.find((l) => l.family === 'sheathing' && l.index > frame.index) ?? frame;
  const at = wall.layers.findLastIndex((f) => f.layer.index <= sheathing.index) + 1;
  const bounds = { leastM: sdM, typicalM: sdM, mostM: sdM };
  const strip: LayerFigures = {
    id: 'flashing',
    layer: sheathing,
    rM2KW: 0,
    dry: bounds,
    wet: bounds,
    storage: 'non-absorbing',
    generic: false,
    field: '',
    assumptions: [],
  };
  return { wall: { ...wall, layers: wall.layers.toSpliced(at, 0, strip) }, id: strip.id };
}
