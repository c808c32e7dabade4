/** One layer of a drawn wall as figures: how it resists heat and vapor, between which bounds, and on whose word. */
import { isSpace } from '../../model/families.js';
import { AIR_SPACE_SD_M } from '../data/air.js';
import { AIR_SPACE_R_M2KW, UNNAMED, UNSAID_FINISH_SD_M, WOOD_DENSITY_KG_PER_M3 } from '../data/generic-figures.js';
import { genericLayer, storageOf } from '../generic-layer.js';
import { sdFromPermeanceM, type StorageClass } from '../resistance.js';
import { finishOf } from '../../vapor/facing.js';
import { insulates, insulationOf } from '../../vapor/insulation.js';
import { usRToSi } from '../../vapor/classes.js';
import { materialNamed, permeanceProvenanceText, rPerInch } from '../../vapor/materials.js';
import type { GenericMaterial } from '../../vapor/data/materials.js';
import { fieldOfLayer } from '../../model/named-field.js';
import type { Layer, Measured } from '../../model/types.js';
import type { Locus } from '../../reading/types.js';

/** Still air layer of equal vapor resistance, m; `typical` lies between the ends. */
export interface SdBounds {
  readonly leastM: number;
  readonly typicalM: number;
  readonly mostM: number;
}
export interface LayerFigures {
  /** Id of the layer, with ` finish` behind it for what is painted on or faces it. */
  readonly id: string;
  readonly layer: Layer;
  readonly rM2KW: number;
  readonly dry: SdBounds;
  readonly wet: SdBounds;
  readonly storage: StorageClass;
  readonly areaMassKgPerM2?: number;
  /** True when no document of the project gives the vapor resistance. */
  readonly generic: boolean;
  /** Field that would replace a generic figure. */
  readonly field: string;
  /** Sentences to print: what was taken for what. */
  readonly assumptions: readonly string[];
}
export interface MissingFigure {
  readonly missing: string;
  /** A clause without capital and full stop. */
  readonly reason: string;
  readonly at: Locus;
}

const OPEN_SD_M = 0.001;
/** Metal foil. @see ISO 10456, table of sd values (from memory, confirm) */
const TIGHTEST_SD_M = 1500;
const MM_PER_INCH = 25.4;
const one = (sdM: number): SdBounds => ({ leastM: sdM, typicalM: sdM, mostM: sdM });
const between = ([leastM, mostM]: readonly [number, number]): SdBounds => ({
  leastM,
  // Halfway in ratio: permeances are known to a factor, not to a difference.
  typicalM: Math.sqrt(Math.max(leastM, OPEN_SD_M) * Math.max(mostM, OPEN_SD_M)),
  mostM,
});

/**
 * Bounds of a declared permeance. A range lies between its ends; `at most` and `at least` leave one end open, which is
 * followed as far as materials go, with the value they name as the likely one.
 */
function declaredSd(permeance: Measured): SdBounds {
  const sd = (ng: number): number => (ng > 0 ? sdFromPermeanceM(ng) : Infinity);
  const named = sd(permeance.value);
  if (permeance.bound === 'between' && permeance.upper !== undefined) return between([sd(permeance.upper), named]);
  if (permeance.bound === 'at most') return { leastM: named, typicalM: named, mostM: Math.max(named, TIGHTEST_SD_M) };
  if (permeance.bound === 'at least') return { leastM: Math.min(named, OPEN_SD_M), typicalM: named, mostM: named };
  return one(named);
}

function airSpaceR(widthMm: number | undefined): number {
  let r = 0;
  for (const [leastMm, rM2KW] of AIR_SPACE_R_M2KW.steps) if ((widthMm ?? 0) >= leastMm) r = rM2KW;
  return r;
}

interface Meant {
  readonly material: GenericMaterial;
  /** Its words name no kind; the material spans what it may be. */
  readonly unnamed: boolean;
}

/** The generic material of a layer: by its words, else all that a thing of its family may be. */
function materialOf(layer: Layer): Meant | undefined {
  const named = layer.material === undefined ? undefined : materialNamed(layer.material.value);
  if (named !== undefined) return { material: named, unnamed: false };
  // A batt is fibrous whoever makes it; any other product has to declare what it is.
  const open = layer.productId === undefined || layer.family === 'batt insulation';
  const material = open ? UNNAMED[layer.family] : undefined;
  return material === undefined ? undefined : { material, unnamed: true };
}

/** A fill that states no thickness is as deep as the framing it fills, mm. */
function depthOfFill(layer: Layer): number | undefined {
  return layer.family === 'batt insulation' || layer.family === 'spray foam'
    ? layer.framing?.depthMm?.value
    : undefined;
}

/** Insulation sold by its R-value is as thick as its material needs for it, mm. */
function thicknessOfR(layer: Layer, material: GenericMaterial | undefined): number | undefined {
  const stated = layer.thermalResistance ?? layer.product?.thermalResistance;
  const perInch = material?.insulation === true ? rPerInch(material) : undefined;
  return stated === undefined || perInch === undefined || !(stated.value > 0)
    ? undefined
    : (MM_PER_INCH * stated.value) / usRToSi(perInch);
}

type Vapor = Pick<LayerFigures, 'dry' | 'wet' | 'generic' | 'field'> & { readonly told?: string };

function vaporOf(layer: Layer, meant: Meant | undefined): Vapor | MissingFigure {
  const dry = layer.permeance ?? layer.product?.permeanceDry;
  if (dry !== undefined) {
    const declared = declaredSd(dry);
    const wet = layer.permeance === undefined ? layer.product?.permeanceWet : undefined;
    return {
      dry: declared,
      wet: wet === undefined ? declared : declaredSd(wet),
      generic: false,
      field: layer.permeance === undefined ? 'product.permeance.dry' : fieldOfLayer(layer, 'permeance'),
    };
  }
  if (layer.productId !== undefined && layer.family !== 'batt insulation')
    return {
      missing: 'product.permeance.dry',
      reason: `the product "${layer.productId.value}" declares no dry-cup permeance`,
      at: layer.at,
    };
  const material = meant?.material;
  const thicknessMm = layer.thicknessMm?.value ?? thicknessOfR(layer, material) ?? depthOfFill(layer);
  const found = (['dry', 'wet'] as const).map((cup) =>
    material === undefined ? undefined : genericLayer(material, thicknessMm, cup),
  );
  const [dryCup, wetCup] = found;
  if (material === undefined || dryCup === undefined) {
    const needsThickness =
      material !== undefined && thicknessMm === undefined && genericLayer(material, 10, 'dry') !== undefined;
    return {
      missing: fieldOfLayer(layer, needsThickness ? 'thickness' : 'permeance'),
      reason: needsThickness
        ? `"${layer.id}" has no thickness, without which its generic permeance is not known`
        : `"${layer.material?.value ?? layer.id}" has no generic permeance`,
      at: layer.at,
    };
  }
  return {
    dry: between(dryCup.sdM),
    wet: between((wetCup ?? dryCup).sdM),
    generic: true,
    field: fieldOfLayer(layer, 'permeance'),
    told:
      meant?.unnamed === true
        ? `"${layer.material?.value ?? layer.id}" names no kind; ${material.name} was looked at (${permeanceProvenanceText(material)}).`
        : `Vapor resistance of "${layer.id}" is that of generic ${material.name} (${permeanceProvenanceText(material)}).`,
  };
}

type Resistance = { readonly rM2KW: number; readonly told?: string };

function resistanceOf(layer: Layer, material: GenericMaterial | undefined): Resistance | MissingFigure {
  const found = insulationOf(layer);
  if (found.resistanceM2KPerW !== undefined)
    return {
      rM2KW: found.resistanceM2KPerW,
      ...(found.assumption === undefined ? {} : { told: `"${layer.id}": ${found.assumption}.` }),
    };
  const thicknessMm = layer.thicknessMm?.value ?? depthOfFill(layer);
  const generic =
    material === undefined || thicknessMm === undefined ? undefined : genericLayer(material, thicknessMm, 'dry')?.rM2KW;
  if (material !== undefined && generic !== undefined)
    return { rM2KW: generic, told: `"${layer.id}" is taken to insulate as ${material.name} does.` };
  if (insulates(layer) || layer.family === 'batt insulation')
    return {
      missing: fieldOfLayer(layer, 'rValue'),
      reason: `"${layer.id}" is insulation without an R-value, or a thickness of a known material`,
      at: layer.at,
    };
  // Boards, papers and films: leaving out their little resistance hardly moves a temperature.
  return { rM2KW: 0 };
}

function finishFigures(layer: Layer): LayerFigures[] | MissingFigure {
  const finish = finishOf(layer);
  const facts = { id: `${layer.id} finish`, layer, rM2KW: 0, storage: 'other' as const };
  switch (finish.kind) {
    case 'none':
      return [];
    case 'unsaid': {
      const mostM = UNSAID_FINISH_SD_M.value;
      const bounds: SdBounds = { leastM: OPEN_SD_M, typicalM: mostM / 2, mostM };
      const told = `The finish of "${layer.id}" is not stated; from bare to two coats of latex paint was looked at.`;
      return [
        {
          ...facts,
          dry: bounds,
          wet: bounds,
          generic: true,
          field: fieldOfLayer(layer, 'finish'),
          assumptions: [told],
        },
      ];
    }
    case 'said': {
      const material = materialNamed(finish.words);
      const dry = material === undefined ? undefined : genericLayer(material, undefined, 'dry');
      const wet = material === undefined ? undefined : genericLayer(material, undefined, 'wet');
      if (material === undefined || dry === undefined)
        return {
          missing: fieldOfLayer(layer, 'permeance'),
          reason: `the finish "${finish.words}" has no generic permeance`,
          at: layer.at,
        };
      return [
        {
          ...facts,
          storage: storageOf(material),
          dry: between(dry.sdM),
          wet: between((wet ?? dry).sdM),
          generic: true,
          field: fieldOfLayer(layer, 'permeance'),
          assumptions: [
            `The finish of "${layer.id}", ${finish.words}, is generic ${material.name} (${permeanceProvenanceText(material)}).`,
          ],
        },
      ];
    }
  }
}

/**
 * The figures of one layer, its finish on the room side first.
 *
 * @returns a missing figure where neither the documents nor the generic table has one; nothing is guessed
 * @see GENERIC_MATERIALS, AIR_SPACE_R_M2KW for what is taken
 */
export function figuresOf(layer: Layer): readonly LayerFigures[] | MissingFigure {
  if (isSpace(layer.family)) return [gap(layer)];
  const meant = materialOf(layer);
  const material = meant?.material;
  const vapor = vaporOf(layer, meant);
  if ('missing' in vapor) return vapor;
  const resistance = resistanceOf(layer, material);
  if ('missing' in resistance) return resistance;
  // A declared permeance is that of the layer as built, finish included.
  const finish = layer.permeance === undefined ? finishFigures(layer) : [];
  if ('missing' in finish) return finish;
  const density = material === undefined ? undefined : WOOD_DENSITY_KG_PER_M3[material.name];
  const mass =
    density === undefined || layer.thicknessMm === undefined
      ? {}
      : { areaMassKgPerM2: (density.value * layer.thicknessMm.value) / 1000 };
  const { told, ...figures } = vapor;
  // Resistance to heat without any to vapor is no layer: still air resists as its thickness does.
  const leastM = resistance.rM2KW > 0 ? Math.max(OPEN_SD_M, (layer.thicknessMm?.value ?? 0) / 1000) : OPEN_SD_M;
  const held = (b: SdBounds): SdBounds => ({
    leastM: Math.max(b.leastM, leastM),
    typicalM: Math.max(b.typicalM, leastM),
    mostM: Math.max(b.mostM, leastM),
  });
  return [
    ...finish,
    {
      id: layer.id,
      layer,
      rM2KW: resistance.rM2KW,
      ...figures,
      dry: held(figures.dry),
      wet: held(figures.wet),
      storage: material === undefined ? storageOfFamily(layer) : storageOf(material),
      ...mass,
      assumptions: [told, resistance.told].filter((t) => t !== undefined),
    },
  ];
}

function gap(layer: Layer): LayerFigures {
  const widthMm = layer.thicknessMm?.value;
  const stated = layer.thermalResistance ?? layer.product?.thermalResistance;
  const bounds = one(AIR_SPACE_SD_M.value);
  return {
    id: layer.id,
    layer,
    rM2KW: stated?.value ?? airSpaceR(widthMm),
    dry: bounds,
    wet: bounds,
    storage: 'other',
    generic: true,
    field: fieldOfLayer(layer, 'vented'),
    assumptions: [],
  };
}

const SHEETS: ReadonlySet<Layer['family']> = new Set<Layer['family']>([
  'fluid-applied membrane',
  'fluid-applied flashing',
  'self-adhered membrane',
  'mechanically fastened sheet',
  'vapor retarder',
  'metal flashing',
  'insulating sheathing',
  'board insulation',
  'batt insulation',
  'spray foam',
]);

/** Storage of a product of no named material: by what its family is made of. */
function storageOfFamily(layer: Layer): StorageClass {
  return SHEETS.has(layer.family) ? 'non-absorbing' : 'other';
}
