/**
 * What a family of products does by its nature, and which family a generic material name belongs to.
 */
import type { Apply, EdgeBond, Family } from './types.js';

const SHEDDING: ReadonlySet<Family> = new Set<Family>([
  'fluid-applied membrane',
  'fluid-applied flashing',
  'joint filler',
  'self-adhered membrane',
  'self-adhered flashing',
  'mechanically fastened sheet',
  'building paper',
  'flexible flashing',
  'metal flashing',
  'rigid pan',
  'tape',
  'transition membrane',
  'boot',
]);
const BONDED: ReadonlySet<Family> = new Set<Family>([
  'fluid-applied membrane',
  'fluid-applied flashing',
  'joint filler',
  'self-adhered membrane',
  'self-adhered flashing',
  'tape',
  'transition membrane',
]);
const FLUID: ReadonlySet<Family> = new Set<Family>([
  'fluid-applied membrane',
  'fluid-applied flashing',
  'joint filler',
]);

/** True for membranes, flashings and joint treatments: water runs on them and past their laps. */
export function shedsWater(family: Family): boolean {
  return SHEDDING.has(family);
}

const SPACES: ReadonlySet<Family> = new Set<Family>(['air space', 'drainage mat']);

/** True for layers that are room rather than material: a cavity, or a mat that keeps one open. */
export function isSpace(family: Family): boolean {
  return SPACES.has(family);
}

/** True for materials that are liquid when they go on and leave no loose edge. */
export function isFluid(family: Family): boolean {
  return FLUID.has(family);
}

/** How the edge of an installed piece is closed when neither the work nor the product says so. */
export function defaultEdge(family: Family): EdgeBond {
  return BONDED.has(family) ? 'bonded' : 'open';
}

/** How the edge of a work is closed: as it says, as its product says, or by the nature of its family. */
export function edgeOf(work: Apply): EdgeBond {
  return (
    work.edge?.value ??
    (work.edgeSeal !== undefined ? 'sealed' : (work.product?.edge?.value ?? defaultEdge(work.family)))
  );
}

/** Generic material names of wall layers, most specific first; matched as whole words in this order. */
const BY_NAME: readonly (readonly [string, Family])[] = [
  ['closed-cell spray foam', 'spray foam'],
  ['open-cell spray foam', 'spray foam'],
  ['spray foam', 'spray foam'],
  ['mineral wool batt', 'batt insulation'],
  ['stone wool batt', 'batt insulation'],
  ['glass fiber batt', 'batt insulation'],
  ['batt', 'batt insulation'],
  ['cellulose', 'batt insulation'],
  ['cavity insulation', 'batt insulation'],
  ['drainage mat', 'drainage mat'],
  ['polyethylene', 'vapor retarder'],
  ['vapor retarder', 'vapor retarder'],
  ['kraft facing', 'vapor retarder'],
  ['polyamide film', 'vapor retarder'],
  ['foil', 'vapor retarder'],
  ['vinyl wall covering', 'vapor retarder'],
  ['insulating concrete form', 'concrete'],
  ['insulating sheathing', 'insulating sheathing'],
  ['extruded polystyrene', 'insulating sheathing'],
  ['xps', 'insulating sheathing'],
  ['eps', 'insulating sheathing'],
  ['expanded polystyrene', 'insulating sheathing'],
  ['polyisocyanurate', 'insulating sheathing'],
  ['polyiso', 'insulating sheathing'],
  ['foam sheathing', 'insulating sheathing'],
  ['rigid foam', 'insulating sheathing'],
  ['rigid insulation', 'insulating sheathing'],
  ['continuous insulation', 'board insulation'],
  ['mineral wool board', 'board insulation'],
  ['stone wool board', 'board insulation'],
  ['wood fiber board', 'board insulation'],
  ['insulation', 'board insulation'],
  ['building paper', 'building paper'],
  ['felt', 'building paper'],
  ['housewrap', 'mechanically fastened sheet'],
  ['sheet membrane', 'mechanically fastened sheet'],
  ['gypsum sheathing', 'sheathing'],
  ['oriented strand board', 'sheathing'],
  ['osb', 'sheathing'],
  ['plywood', 'sheathing'],
  ['wood panel sheathing', 'sheathing'],
  ['wood structural panel', 'sheathing'],
  ['fiberboard', 'sheathing'],
  ['sheathing', 'sheathing'],
  ['gypsum board', 'interior board'],
  ['gypsum wall board', 'interior board'],
  ['plaster', 'interior board'],
  ['interior finish', 'interior board'],
  ['paint', 'paint'],
  ['primer', 'paint'],
  ['air space', 'air space'],
  ['cavity', 'air space'],
  ['furring', 'air space'],
  ['ventilated gap', 'air space'],
  ['brick', 'cladding'],
  ['stucco', 'cladding'],
  ['siding', 'cladding'],
  ['cladding', 'cladding'],
  ['fiber cement', 'cladding'],
  ['metal panel', 'cladding'],
  ['stone veneer', 'cladding'],
  ['composite panel', 'cladding'],
  ['concrete masonry', 'masonry'],
  ['masonry', 'masonry'],
  ['block', 'masonry'],
  ['concrete', 'concrete'],
  ['studs', 'framing'],
  ['framing', 'framing'],
  ['frame', 'framing'],
];

/** Family of a generic material name; `other` when none of the known words is in it. */
export function familyOfMaterial(material: string): Family {
  const name = ` ${material.toLowerCase().replace(/[^a-z0-9-]+/g, ' ')} `;
  for (const [words, family] of BY_NAME) if (name.includes(` ${words} `) || name.includes(` ${words}s `)) return family;
  return 'other';
}
