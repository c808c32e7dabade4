/** Continuous insulation outside the framing: how much, how sure, and where it stands. */
import { permToNg, usRToSi } from './classes.js';
import { SPRAY_FOAM_COUNTS } from './data/condition-tables.js';
import { materialNamed, permeancePermAt, provenanceOf, rPerInch } from './materials.js';
import type { Detail, Layer, Measured } from '../model/types.js';

export interface Insulation {
  readonly layer: Layer;
  /** m2 K/W; absent when neither an R-value nor a known material and thickness is given. */
  readonly resistanceM2KPerW?: number;
  /** The stated R-value or thickness it rests on. */
  readonly stated?: Measured;
  /** `R 5 per inch taken for extruded polystyrene`, when the value is generic. */
  readonly assumption?: string;
}
export interface ContinuousInsulation {
  readonly layers: readonly Insulation[];
  /** Sum of what is known, m2 K/W. */
  readonly knownM2KPerW: number;
  readonly unknown: readonly Insulation[];
  readonly assumptions: readonly string[];
}

const MM_PER_INCH = 25.4;
const OUTBOARD: ReadonlySet<Layer['family']> = new Set<Layer['family']>([
  'insulating sheathing',
  'board insulation',
  'spray foam',
]);

/** Insulation by its family, or by its name where the family does not tell. */
export function insulates(layer: Layer): boolean {
  return (
    OUTBOARD.has(layer.family) ||
    (layer.family === 'other' &&
      layer.material !== undefined &&
      materialNamed(layer.material.value)?.insulation === true)
  );
}

/** Foam plastic by its product family or its name. */
export function isFoamPlastic(layer: Layer): boolean {
  const material = layer.material === undefined ? undefined : materialNamed(layer.material.value);
  return material === undefined
    ? layer.family === 'insulating sheathing' || layer.family === 'spray foam'
    : material.foamPlastic === true;
}

/** Resistance of one layer: stated, of its product, or thickness times the generic R per inch. */
export function insulationOf(layer: Layer): Insulation {
  const stated = layer.thermalResistance ?? layer.product?.thermalResistance;
  if (stated !== undefined) return { layer, stated, resistanceM2KPerW: stated.value };
  const material = layer.material === undefined ? undefined : materialNamed(layer.material.value);
  const perInch = material === undefined ? undefined : rPerInch(material);
  if (material === undefined || perInch === undefined || layer.thicknessMm === undefined) return { layer };
  return {
    layer,
    stated: layer.thicknessMm,
    resistanceM2KPerW: usRToSi((perInch * layer.thicknessMm.value) / MM_PER_INCH),
    assumption: `R ${+perInch.toPrecision(3)} per inch taken for ${material.name} (${provenanceOf(material, 'rPerInch') === 'seen' ? (material.seen?.citation ?? '') : provenanceOf(material, 'rPerInch')})`,
  };
}

/** Spray foam in the cavity that is tight enough to count beside the insulation outside. */
function countsInCavity(layer: Layer): boolean {
  if (layer.family !== 'spray foam') return false;
  const declared = layer.permeance ?? layer.product?.permeanceDry;
  if (declared !== undefined)
    return (declared.upper ?? declared.value) <= permToNg(SPRAY_FOAM_COUNTS.mostPerm) * (1 + 1e-9);
  const material = layer.material === undefined ? undefined : materialNamed(layer.material.value);
  const spread = material === undefined ? undefined : permeancePermAt(material, layer.thicknessMm?.value);
  return spread !== undefined && spread[1] <= SPRAY_FOAM_COUNTS.mostPerm;
}

/**
 * The continuous insulation of a framed wall: insulation outside the frame that is not interrupted by framing, and
 * tight spray foam in the frame itself.
 *
 * A layer outside the frame that names no framing of its own counts as continuous unless it says `continuous: false`.
 * @param frame the framed layer, see `frameOf`
 */
export function continuousInsulation(detail: Detail, frame: Layer): ContinuousInsulation {
  const layers = detail.layers
    .filter((layer) =>
      layer === frame
        ? countsInCavity(layer)
        : layer.index > frame.index &&
          layer.continuous?.value !== false &&
          (layer.continuous?.value === true || (insulates(layer) && layer.framing === undefined)),
    )
    .map(insulationOf);
  return {
    layers,
    knownM2KPerW: layers.reduce((sum, i) => sum + (i.resistanceM2KPerW ?? 0), 0),
    unknown: layers.filter((i) => i.resistanceM2KPerW === undefined),
    assumptions: layers.flatMap((i) => (i.assumption === undefined ? [] : [i.assumption])),
  };
}
