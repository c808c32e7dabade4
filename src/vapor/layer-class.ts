/** Vapor retarder class of one layer of the wall, from its permeance, its product or its name. */
import { classOfPermeance, classOfQuantity, permToNg, tighter, type VaporClass } from './classes.js';
import { BARE, facingIn, PAINTED } from './facing.js';
import { materialNamed, permeancePermAt } from './materials.js';
import { fieldOfLayer } from '../model/named-field.js';
import type { Layer } from '../model/types.js';
import type { Locus } from '../reading/types.js';

/** A class, the text that explains it, and the value to change. */
export interface LayerClass {
  readonly kind: 'known';
  readonly vaporClass: VaporClass;
  readonly responsive: boolean;
  /** Wet-cup permeance, ng/(Pa s m2), when declared. */
  readonly wetNgPerPaSM2?: number;
  /** Dry permeance, ng/(Pa s m2), where a number stands behind the class. */
  readonly ngPerPaSM2?: number;
  /** `0.06 perm`, `kraft facing, class II by its kind` */
  readonly words: string;
  /** True when no test value stands in the documents. */
  readonly generic: boolean;
  readonly at: Locus;
}
export interface UnknownClass {
  readonly kind: 'unknown';
  /** What would answer it. */
  readonly missing: readonly string[];
  readonly reason: string;
  readonly at: Locus;
}

/** The class of what the words name: a facing, a paint, a sheet. `undefined` when the table cannot tell. */
function classOfWords(text: string, thicknessMm: number | undefined, at: Locus): LayerClass | undefined {
  const material = materialNamed(text);
  if (material === undefined) return undefined;
  const spread = permeancePermAt(material, thicknessMm);
  const base = { kind: 'known', responsive: material.responsive === true, generic: true, at } as const;
  if (material.deemed !== undefined)
    return { ...base, vaporClass: material.deemed, words: `${material.name}, class ${material.deemed} by its kind` };
  if (spread === undefined) return undefined;
  const least = classOfPermeance(permToNg(spread[0]));
  const most = classOfPermeance(permToNg(spread[1]));
  // A responsive sheet is judged as the class it reaches when dry at its most open.
  if (least !== most && material.responsive !== true) return undefined;
  const range =
    spread[0] === spread[1]
      ? `${+spread[0].toPrecision(2)}`
      : `${+spread[0].toPrecision(2)} to ${+spread[1].toPrecision(2)}`;
  return {
    ...base,
    vaporClass: most,
    ngPerPaSM2: permToNg(spread[1]),
    words: `${material.name}, ${range} perm as a generic value`,
  };
}

const anyPaint = (at: Locus): LayerClass => ({
  kind: 'known',
  vaporClass: 'III',
  responsive: false,
  generic: true,
  words: 'paint, class III as common practice takes it',
  at,
});

/** Class of the facing or finish that a layer carries, beside what the layer itself is. */
function classOfFinish(layer: Layer): LayerClass | UnknownClass | undefined {
  const { finish } = layer;
  if (finish !== undefined) {
    if (BARE.test(finish.value)) return undefined;
    const known = classOfWords(finish.value, undefined, finish.at);
    if (known !== undefined) return known;
    if (PAINTED.test(finish.value)) return anyPaint(finish.at);
    return {
      kind: 'unknown',
      at: finish.at,
      missing: [fieldOfLayer(layer, 'permeance')],
      reason: `the finish "${finish.value}" has no generic permeance`,
    };
  }
  const text = layer.material?.value ?? '';
  if (layer.material === undefined || (layer.family !== 'interior board' && layer.family !== 'batt insulation'))
    return undefined;
  if (BARE.test(text)) return undefined;
  // Kraft, foil and paint are words inside the name of a board or batt.
  const facing = facingIn(text);
  if (facing !== undefined) return classOfWords(facing, undefined, layer.material.at);
  return PAINTED.test(text) ? anyPaint(layer.material.at) : undefined;
}

function classOfBody(layer: Layer): LayerClass | UnknownClass {
  const { product } = layer;
  const responsive =
    product?.responsive?.value === true ||
    (product?.permeanceWet !== undefined && product.permeanceWet.value > permToNg(1) * (1 + 1e-9));
  const wet = product?.permeanceWet === undefined ? {} : { wetNgPerPaSM2: product.permeanceWet.value };
  const declared = layer.permeance ?? product?.permeanceDry;
  if (declared !== undefined) {
    const vaporClass = classOfQuantity(declared);
    const at = layer.permeance?.at ?? layer.productId?.at ?? layer.at;
    if (vaporClass === undefined)
      return {
        kind: 'unknown',
        at,
        missing: [layer.permeance === undefined ? 'product.permeance.dry' : fieldOfLayer(layer, 'permeance')],
        reason: `its permeance ${declared.text} lies in two classes`,
      };
    return {
      kind: 'known',
      vaporClass,
      responsive,
      ...wet,
      ngPerPaSM2: declared.upper ?? declared.value,
      words: declared.text,
      generic: false,
      at,
    };
  }
  if (layer.productId !== undefined)
    return {
      kind: 'unknown',
      at: layer.productId.at,
      missing: ['product.permeance.dry'],
      reason: `the product "${layer.productId.value}" declares no dry-cup permeance`,
    };
  const text = layer.material?.value ?? '';
  return (
    classOfWords(text, layer.thicknessMm?.value, layer.material?.at ?? layer.at) ?? {
      kind: 'unknown',
      at: layer.material?.at ?? layer.at,
      missing: [fieldOfLayer(layer, 'permeance')],
      reason: `"${text}" has no generic permeance that settles its class`,
    }
  );
}

/**
 * The class of a layer with its facing or finish: the tighter of the two.
 *
 * A declared permeance is that of the layer as built, finish included. A batt alone is open; only its facing counts.
 * @see data/materials.ts for generic values
 */
export function classOfLayer(layer: Layer): LayerClass | UnknownClass {
  if (layer.permeance !== undefined) return classOfBody(layer);
  const finish = classOfFinish(layer);
  const open: LayerClass = {
    kind: 'known',
    vaporClass: 'none',
    responsive: false,
    words: 'no facing stated',
    generic: true,
    at: layer.at,
  };
  const body =
    layer.family === 'batt insulation' && layer.product?.permeanceDry === undefined ? open : classOfBody(layer);
  if (finish === undefined) return body;
  if (finish.kind === 'unknown' || body.kind === 'unknown') {
    // A known class I cannot be made tighter by what is not known.
    const known = finish.kind === 'known' ? finish : body.kind === 'known' ? body : undefined;
    return known?.vaporClass === 'I' ? known : finish.kind === 'unknown' ? finish : body;
  }
  return tighter(body.vaporClass, finish.vaporClass) ? body : finish;
}
