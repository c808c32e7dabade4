/** Turns a generic material of the vapor tables into a layer of the moisture calculation. */
import { permToNg, usRToSi } from '../vapor/classes.js';
import type { GenericMaterial, Spread } from '../vapor/data/materials.js';
import { permeancePermAt, rPerInch } from '../vapor/materials.js';
import { TIGHT_SD_M } from './data/air.js';
import { sdFromMuM, sdFromPermeanceM, type StorageClass } from './resistance.js';

const MM_PER_INCH = 25.4;
const SOLID_WOOD: ReadonlySet<string> = new Set(['softwood', 'hardwood']);
const ABSORBING: ReadonlySet<string> = new Set(['cellulose', 'expanded cork']);
const PAINT: ReadonlySet<string> = new Set(['latex paint', 'vapor retarder paint', 'kraft facing']);

/**
 * What becomes of water against a material: wood takes it up and suffers, insulation and sheets let it run, boards
 * and masonry soak it up.
 *
 * @see DIN 4108-3 sets its limits by these classes (seen at second hand); which material belongs where is common
 * practice, no source
 */
export function storageOf(material: GenericMaterial): StorageClass {
  if (SOLID_WOOD.has(material.name)) return 'wood';
  if (material.sheathing === 'wood panel' || material.sheathing === 'fiberboard' || material.name === 'hardboard')
    return 'wood panel';
  if (ABSORBING.has(material.name) || PAINT.has(material.name)) return 'other';
  const sheet = material.lambdaWPerMK === undefined && material.permeancePerm !== undefined;
  const tight = (material.permeancePerm?.[1] ?? Infinity) <= 0.1;
  return material.insulation === true || material.foamPlastic === true || sheet || tight ? 'non-absorbing' : 'other';
}

export interface LayerSpread {
  /** Least and most still air layer, m. */
  readonly sdM: Spread;
  /** m2 K/W, never more than it surely has; absent when the table does not say. */
  readonly rM2KW?: number;
  readonly storage: StorageClass;
}

/**
 * What the tables say of a layer.
 *
 * The US permeance is taken where the table has one, since the documents are written in that system; else the vapor
 * resistance factor. Where only the dry cup is printed, the wet one follows in the ratio of the two factors.
 * @param cup `dry` for layers in dry air, `wet` in damp air: the cold side of the wall
 * @param thicknessMm may be missing for paints and films, whose permeance is that of the film as sold
 * @returns `undefined` when the table has no vapor resistance for it
 * @throws RangeError when a thickness is given and not above zero
 * @see GENERIC_MATERIALS
 */
export function genericLayer(
  material: GenericMaterial,
  thicknessMm: number | undefined,
  cup: 'dry' | 'wet',
): LayerSpread | undefined {
  if (thicknessMm !== undefined && !(thicknessMm > 0))
    throw new RangeError(`A thickness above zero is expected, in mm; found ${thicknessMm}.`);
  const sdM = spreadM(material, thicknessMm, cup);
  if (sdM === undefined) return undefined;
  const perInch = rPerInch(material);
  return {
    sdM,
    ...(perInch === undefined || thicknessMm === undefined
      ? {}
      : { rM2KW: usRToSi((perInch * thicknessMm) / MM_PER_INCH) }),
    storage: storageOf(material),
  };
}

function spreadM(material: GenericMaterial, thicknessMm: number | undefined, cup: 'dry' | 'wet'): Spread | undefined {
  const { muDry, muWet } = material;
  const ofPerms = ([least, most]: Spread): Spread => [sdOfPermM(most), sdOfPermM(least)];
  if (cup === 'wet' && material.permeanceWetPerm !== undefined) return ofPerms(material.permeanceWetPerm);
  const perms = permeancePermAt(material, thicknessMm);
  if (perms !== undefined) {
    // Damp, a board lets more through; by how much, only the two factors tell.
    const opened = cup === 'wet' && muDry !== undefined && muWet !== undefined ? muDry / muWet : 1;
    return ofPerms([perms[0] * opened, perms[1] * opened]);
  }
  const mu = cup === 'dry' ? muDry : muWet;
  if (mu === undefined || thicknessMm === undefined) return undefined;
  const sdM = sdFromMuM(mu, thicknessMm);
  return [sdM, sdM];
}

const sdOfPermM = (perm: number): number => Math.min(TIGHT_SD_M.value, sdFromPermeanceM(permToNg(perm)));
