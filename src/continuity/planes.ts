/** What carries a control over the wall: pieces on the face, or layers as they are drawn. */
import type { Piece, WallFace } from '../geometry/types.js';
import { shedsWater } from '../model/families.js';
import type { Control, Detail, Family, Layer } from '../model/types.js';
import { frameOf } from '../vapor/frame.js';
import { interiorSide } from '../vapor/interior-side.js';

export type Plane =
  /** Pieces put on the face by work: the line turns into the opening over flashing. */
  | { readonly on: 'face'; readonly pieces: readonly [Piece, ...Piece[]]; readonly layer?: Layer }
  /** Layers that end at the opening by themselves: the line goes on over the interior seal. */
  | { readonly on: 'layers'; readonly layers: readonly [Layer, ...Layer[]] };

const INSULATION: ReadonlySet<Family> = new Set<Family>([
  'batt insulation',
  'board insulation',
  'insulating sheathing',
  'spray foam',
]);

const some = <T>(list: readonly T[]): readonly [T, ...T[]] | undefined => {
  const [first, ...rest] = list;
  return first === undefined ? undefined : [first, ...rest];
};

/** True unless the author names what a layer controls and leaves this control out. */
function mayPlay(layer: Layer | undefined, control: Control): boolean {
  return layer === undefined || layer.controls.length === 0 || layer.controls.some((c) => c.value === control);
}

/** True when the author says that a layer plays this control. */
export function isNamedFor(layer: Layer, control: Control): boolean {
  return layer.controls.some((c) => c.value === control);
}

/** True for layers that insulate: named for it, or of a family that does. */
export function insulates(layer: Layer): boolean {
  return layer.controls.length > 0 ? isNamedFor(layer, 'thermal') : INSULATION.has(layer.family);
}

function fieldOf(face: WallFace, keep: (piece: Piece) => boolean): readonly [Piece, ...Piece[]] | undefined {
  return some(face.pieces.filter((p) => p.role === 'field' && p.sheds && p.face.length > 0 && keep(p)));
}

/** The layer that slows vapor: named for it, else the class I or II retarder on the room side of the frame. */
function vaporLayer(detail: Detail): Layer | undefined {
  const named = detail.layers.find((l) => isNamedFor(l, 'vapor'));
  const frame = frameOf(detail);
  if (named !== undefined || frame === undefined) return named;
  const side = interiorSide(detail, frame);
  return side.kind === 'retarder' && side.retarder.vaporClass !== 'III' ? side.retarder.layer : undefined;
}

/**
 * The plane of a control.
 *
 * Water and air run over the field pieces that shed water, unless the author says that another layer plays the
 * control. Vapor runs over the retarder, heat over the layers that insulate.
 *
 * @returns `undefined` when nothing shown plays the control
 */
export function planeOf(detail: Detail, face: WallFace, control: Control): Plane | undefined {
  if (control === 'thermal') {
    const layers = some(detail.layers.filter(insulates));
    return layers === undefined ? undefined : { on: 'layers', layers };
  }
  if (control === 'vapor') {
    const layer = vaporLayer(detail);
    if (layer === undefined) return undefined;
    const pieces = fieldOf(face, (p) => p.layer === layer);
    if (pieces !== undefined) return { on: 'face', pieces, layer };
    return shedsWater(layer.family) ? undefined : { on: 'layers', layers: [layer] };
  }
  const pieces = fieldOf(face, (p) => mayPlay(p.layer, control));
  if (pieces !== undefined) return { on: 'face', pieces };
  // A membrane that no work puts on has no shape that could be followed.
  const layers = some(detail.layers.filter((l) => isNamedFor(l, control) && !shedsWater(l.family)));
  return layers === undefined ? undefined : { on: 'layers', layers };
}

/** True when two planes are the same pieces or layers, so that a gap in one is a gap in the other. */
export function samePlane(a: Plane | undefined, b: Plane | undefined): boolean {
  if (a === undefined || b === undefined) return false;
  if (a.on === 'face') return b.on === 'face' && a.pieces.every((p) => b.pieces.includes(p));
  return b.on === 'layers' && a.layers.every((l) => b.layers.includes(l));
}
