/** Finds the generic material that a drawing's words mean, and what it does at a thickness. */
import { GENERIC_MATERIALS, type GenericMaterial, type Spread } from './data/materials.js';

const MM_PER_INCH = 25.4;
/** W/(m K) of one Btu-in/(h ft2 degF). @see NIST SP 811 */
const LAMBDA_PER_INCH_R = 0.1442279;

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');
}

/** Singular and plural are the same word: `clay bricks` is clay brick. */
const singular = (word: string): string =>
  word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;

const INDEX = GENERIC_MATERIALS.flatMap((material) =>
  [material.name, ...material.aliases].map((alias) => ({ material, words: wordsOf(alias).map(singular) })),
)
  // The longest name that fits says most.
  .sort((a, b) => b.words.join('').length - a.words.join('').length);

/** A library says the same few hundred names over and over; forgetting them all now and then bounds memory. */
const MOST_REMEMBERED = 2000;
const NOTHING = Symbol('no material');
const remembered = new Map<string, GenericMaterial | typeof NOTHING>();

/**
 * The generic material a text names, by the longest name or alias that is wholly in it.
 *
 * Case, hyphens, plurals and the order of words do not matter: `polyiso, foil-faced` is `foil-faced polyiso`.
 * @returns `undefined` when no known name is in the text
 */
export function materialNamed(text: string): GenericMaterial | undefined {
  const before = remembered.get(text);
  if (before !== undefined) return before === NOTHING ? undefined : before;
  const words = new Set(wordsOf(text).map(singular));
  const found = INDEX.find((entry) => entry.words.every((word) => words.has(word)))?.material;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(text, found ?? NOTHING);
  return found;
}

/** Every name and alias the table knows, in the order of the table. */
export function knownMaterials(): string[] {
  return GENERIC_MATERIALS.flatMap((material) => [material.name, ...material.aliases]);
}

/**
 * Dry-cup permeance of a layer of the material, US perm.
 *
 * @param thicknessMm needed where the table holds permeability
 * @returns least and most in use; `undefined` when the table does not say or the thickness is missing
 */
export function permeancePermAt(material: GenericMaterial, thicknessMm: number | undefined): Spread | undefined {
  if (material.permeancePerm !== undefined) return material.permeancePerm;
  if (material.permeabilityPermIn === undefined || thicknessMm === undefined || !(thicknessMm > 0)) return undefined;
  const inches = thicknessMm / MM_PER_INCH;
  return [material.permeabilityPermIn[0] / inches, material.permeabilityPermIn[1] / inches];
}

/** How one value of a row is known; a row that has one value from a public document has the others from memory. */
export function provenanceOf(
  material: GenericMaterial,
  value: 'rPerInch' | 'deemed' | 'permeance',
): 'seen' | 'from memory, confirm' {
  return material.seen?.value === value ? 'seen' : 'from memory, confirm';
}

const CALLED = { rPerInch: 'R per inch', deemed: 'class' } as const;

/** How the permeance of a row is known, beside what else of it was seen: `class seen; permeance from memory, confirm`. */
export function permeanceProvenanceText(material: GenericMaterial): string {
  const permeance = provenanceOf(material, 'permeance');
  return material.seen === undefined ? permeance : `${CALLED[material.seen.value]} seen; permeance ${permeance}`;
}

/**
 * US R-value of one inch: as quoted in the trade, else from the larger conductivity, so that insulation is never
 * credited with more than it surely has. `undefined` when the table has neither.
 */
export function rPerInch(material: GenericMaterial): number | undefined {
  return (
    material.rPerInch ??
    (material.lambdaWPerMK === undefined ? undefined : LAMBDA_PER_INCH_R / material.lambdaWPerMK[1])
  );
}
