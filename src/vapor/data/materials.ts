/**
 * Generic materials: what a drawing means by "OSB" or "mineral wool board".
 *
 * From memory in the manner of ISO 10456 (lambda, mu) and of US handbooks (permeance, permeability), but for the value
 * that a row marks as seen. A range is the spread in use, not a tolerance: a check that a range leaves undecided stays open.
 */
import type { SheathingKind } from './condition-tables.js';

export type Spread = readonly [least: number, most: number];
export type Facing = 'I' | 'II' | 'III';

export interface GenericMaterial {
  readonly name: string;
  /** Further ways to say it; word order does not matter, all words of one alias must occur. */
  readonly aliases: readonly string[];
  /** Thermal conductivity, W/(m K). */
  readonly lambdaWPerMK?: Spread;
  /** US R-value of one inch, where it is quoted that way; otherwise it follows from lambda. */
  readonly rPerInch?: number;
  /** Vapor resistance factor in the dry and in the wet cup. */
  readonly muDry?: number;
  readonly muWet?: number;
  /** US permeance of the layer as commonly made, perm; dry cup unless said. */
  readonly permeancePerm?: Spread;
  readonly permeanceWetPerm?: Spread;
  /** US permeability, perm-in. */
  readonly permeabilityPermIn?: Spread;
  /** The class the code gives it by name, without a test. */
  readonly deemed?: Facing;
  /** Opens up when damp. */
  readonly responsive?: true;
  /** Rots, swells or loses strength when it stays wet. */
  readonly moistureSensitive?: true;
  readonly foamPlastic?: true;
  /** Put in for its thermal resistance. */
  readonly insulation?: true;
  readonly sheathing?: SheathingKind;
  /** The one value of the row that was read in a public document; every other value is from memory. */
  readonly seen?: SeenValue;
}

export interface SeenValue {
  readonly value: 'rPerInch' | 'deemed';
  readonly citation: string;
  readonly url: string;
}

function m(
  name: string,
  aliases: readonly string[],
  facts: Omit<GenericMaterial, 'name' | 'aliases'>,
): GenericMaterial {
  return { name, aliases, ...facts };
}
/** Its R per inch stands on a public information sheet on walls with high R-value. */
function withSheet(material: GenericMaterial, url: string): GenericMaterial {
  return {
    ...material,
    seen: { value: 'rPerInch', citation: 'public information sheet on wall assemblies', url },
  };
}
/** Its class stands in the code's list of materials. */
function byCode(material: GenericMaterial): GenericMaterial {
  return {
    ...material,
    seen: {
      value: 'deemed',
      citation: 'IRC 2021 Table R702.7(1)',
      url: 'https://basc.pnnl.gov/building-assemblies/1a',
    },
  };
}
const ADVANCED =
  'https://www.buildingscience.com/documents/enclosures-that-work/high-r-value-wall-assemblies/high-r-value-wall-advanced-wall';
const OFFSET =
  'https://buildingscience.com/documents/enclosures-that-work/high-r-value-wall-assemblies/high-r-wall-offset-frame-wall';

const BOARDS: readonly GenericMaterial[] = [
  m('gypsum board', ['gypsum wall board', 'gypsum wallboard', 'drywall'], {
    lambdaWPerMK: [0.21, 0.25],
    muDry: 10,
    muWet: 4,
    permeancePerm: [40, 50],
    moistureSensitive: true,
  }),
  m('gypsum plaster', ['plaster'], {
    lambdaWPerMK: [0.4, 0.4],
    muDry: 10,
    muWet: 6,
    permeancePerm: [20, 20],
    moistureSensitive: true,
  }),
  m('gypsum sheathing', ['glass-mat gypsum sheathing', 'exterior gypsum board'], {
    lambdaWPerMK: [0.2, 0.2],
    muDry: 10,
    muWet: 6,
    permeancePerm: [20, 25],
    moistureSensitive: true,
    sheathing: 'gypsum',
  }),
  m('plywood', ['plywood sheathing'], {
    lambdaWPerMK: [0.13, 0.17],
    muDry: 200,
    muWet: 70,
    permeancePerm: [0.5, 1],
    moistureSensitive: true,
    sheathing: 'wood panel',
  }),
  m('oriented strand board', ['OSB'], {
    lambdaWPerMK: [0.13, 0.13],
    muDry: 50,
    muWet: 30,
    permeancePerm: [0.75, 2],
    moistureSensitive: true,
    sheathing: 'wood panel',
  }),
  m('wood structural panel', ['wood panel sheathing', 'wood sheathing', 'wood based sheathing'], {
    lambdaWPerMK: [0.13, 0.17],
    permeancePerm: [0.5, 2],
    moistureSensitive: true,
    sheathing: 'wood panel',
  }),
  m('particleboard', [], {
    lambdaWPerMK: [0.127, 0.14],
    muDry: 50,
    muWet: 15,
    moistureSensitive: true,
    sheathing: 'wood panel',
  }),
  m('fiberboard', ['wood fiberboard', 'wood fiber board', 'fiberboard sheathing'], {
    lambdaWPerMK: [0.07, 0.07],
    muDry: 5,
    muWet: 3,
    permeancePerm: [20, 50],
    moistureSensitive: true,
    sheathing: 'fiberboard',
  }),
  m('hardboard', ['medium-density fiberboard'], {
    lambdaWPerMK: [0.18, 0.18],
    muDry: 30,
    muWet: 20,
    permeancePerm: [11, 11],
    moistureSensitive: true,
  }),
  m('cement-bonded board', ['cement board'], { lambdaWPerMK: [0.23, 0.23], muDry: 50, muWet: 30 }),
  m('wood-wool board', [], { lambdaWPerMK: [0.08, 0.08], muDry: 5, muWet: 3, moistureSensitive: true }),
  m('softwood', ['wood boards', 'wood siding'], {
    lambdaWPerMK: [0.13, 0.13],
    muDry: 50,
    muWet: 20,
    permeabilityPermIn: [0.4, 5.4],
    moistureSensitive: true,
  }),
  m('hardwood', [], { lambdaWPerMK: [0.18, 0.18], muDry: 200, muWet: 50, moistureSensitive: true }),
];

const INSULATION: readonly GenericMaterial[] = [
  m(
    'mineral wool',
    ['glass fiber', 'glass wool', 'stone wool', 'mineral wool batt', 'mineral wool board', 'glass fiber batt'],
    { lambdaWPerMK: [0.032, 0.04], muDry: 1, muWet: 1, permeabilityPermIn: [116, 116] },
  ),
  withSheet(
    m('cellulose', ['cellulose insulation'], {
      lambdaWPerMK: [0.038, 0.042],
      rPerInch: 3.7,
      muDry: 2,
      muWet: 2,
      permeabilityPermIn: [75, 75],
      moistureSensitive: true,
    }),
    OFFSET,
  ),
  withSheet(
    m('expanded polystyrene', ['EPS'], {
      lambdaWPerMK: [0.031, 0.04],
      rPerInch: 4,
      muDry: 60,
      muWet: 60,
      permeabilityPermIn: [2, 5.8],
      foamPlastic: true,
    }),
    ADVANCED,
  ),
  withSheet(
    m('extruded polystyrene', ['XPS'], {
      lambdaWPerMK: [0.029, 0.036],
      rPerInch: 5,
      muDry: 150,
      muWet: 150,
      permeabilityPermIn: [1.2, 1.2],
      foamPlastic: true,
    }),
    ADVANCED,
  ),
  m('polyisocyanurate', ['polyiso'], { lambdaWPerMK: [0.023, 0.028], foamPlastic: true }),
  m('felt-faced polyisocyanurate', ['glass-faced polyisocyanurate', 'felt-faced polyiso', 'glass-faced polyiso'], {
    lambdaWPerMK: [0.023, 0.028],
    muDry: 60,
    muWet: 60,
    permeabilityPermIn: [1, 4],
    foamPlastic: true,
  }),
  withSheet(
    m('foil-faced polyisocyanurate', ['foil-faced polyiso'], {
      lambdaWPerMK: [0.022, 0.024],
      rPerInch: 6.5,
      permeancePerm: [0, 0.05],
      foamPlastic: true,
    }),
    ADVANCED,
  ),
  withSheet(
    m('closed-cell spray foam', ['high-density spray foam'], {
      lambdaWPerMK: [0.023, 0.028],
      rPerInch: 6,
      muDry: 60,
      muWet: 60,
      permeabilityPermIn: [0.8, 1.6],
      foamPlastic: true,
    }),
    OFFSET,
  ),
  m('open-cell spray foam', ['low-density spray foam'], {
    lambdaWPerMK: [0.037, 0.04],
    muDry: 4,
    muWet: 4,
    permeabilityPermIn: [20, 30],
    foamPlastic: true,
  }),
  m('phenolic foam', [], { lambdaWPerMK: [0.02, 0.024], muDry: 50, muWet: 50, foamPlastic: true }),
  m('cellular glass', [], { lambdaWPerMK: [0.04, 0.04], permeancePerm: [0, 0] }),
  m('expanded cork', ['cork board'], { lambdaWPerMK: [0.04, 0.045], muDry: 10, muWet: 5, moistureSensitive: true }),
  // Foam of unstated kind: anything from a foil-faced board to an open one.
  m('foam sheathing', ['foam plastic', 'rigid foam', 'continuous foam', 'insulating foam sheathing'], {
    lambdaWPerMK: [0.022, 0.04],
    permeabilityPermIn: [0.05, 5.8],
    foamPlastic: true,
  }),
];

const SHEETS: readonly GenericMaterial[] = [
  byCode(
    m('polyethylene sheet', ['polyethylene', 'polyethylene film', 'plastic sheeting', 'poly', 'poly sheet'], {
      lambdaWPerMK: [0.33, 0.33],
      permeancePerm: [0.03, 0.08],
      deemed: 'I',
    }),
  ),
  byCode(m('unperforated foil', ['aluminum foil', 'foil facing'], { permeancePerm: [0, 0.05], deemed: 'I' })),
  byCode(
    m('kraft facing', ['kraft-faced', 'kraft paper'], {
      permeancePerm: [0.3, 1],
      permeanceWetPerm: [1, 2],
      deemed: 'II',
    }),
  ),
  byCode(
    m('vapor retarder paint', ['vapor retarder primer', 'vapor barrier paint', 'vapor barrier primer'], {
      permeancePerm: [0.45, 0.6],
      deemed: 'II',
    }),
  ),
  byCode(m('latex paint', ['enamel paint', 'latex enamel'], { permeancePerm: [5, 10], deemed: 'III' })),
  m(
    'responsive membrane',
    [
      'polyamide film',
      'variable-permeance membrane',
      'variable-permeance retarder',
      'responsive vapor retarder',
      'responsive film',
      'smart vapor retarder',
      'smart membrane',
    ],
    { permeancePerm: [0.5, 1], permeanceWetPerm: [10, 20], responsive: true },
  ),
  m('oil-based paint', ['oil paint', 'alkyd paint'], { permeancePerm: [0.3, 1.6] }),
  m('vapor-open membrane', ['housewrap'], { permeancePerm: [15, 60] }),
  // From a thin paper-backed sheet to a heavy one; perforated coverings pass more.
  m('vinyl wall covering', ['vinyl wallpaper', 'vinyl covering'], { permeancePerm: [0.2, 1] }),
  m('No. 15 felt', ['asphalt felt', 'building paper', 'felt'], {
    lambdaWPerMK: [0.17, 0.17],
    permeancePerm: [4, 4],
    permeanceWetPerm: [5.6, 5.6],
  }),
  m('bituminous membrane', ['bituminous felt', 'modified bitumen'], {
    lambdaWPerMK: [0.23, 0.23],
    muDry: 50000,
    muWet: 50000,
    permeancePerm: [0.02, 0.05],
  }),
  m('aluminum sheet', ['steel sheet', 'metal sheet', 'metal panel'], { permeancePerm: [0, 0] }),
];

const MASS: readonly GenericMaterial[] = [
  m('stucco', ['cement plaster', 'cement-sand render'], {
    lambdaWPerMK: [1, 1],
    muDry: 10,
    muWet: 6,
    permeancePerm: [2, 6],
  }),
  m('lime plaster', ['lime-sand plaster'], { lambdaWPerMK: [0.8, 0.8], muDry: 10, muWet: 6, permeancePerm: [15, 15] }),
  m('concrete', ['cast concrete', 'reinforced concrete'], {
    lambdaWPerMK: [1.35, 2.3],
    muDry: 120,
    muWet: 70,
    permeabilityPermIn: [3.2, 3.2],
  }),
  m('clay brick', ['brick', 'brick veneer'], {
    lambdaWPerMK: [0.56, 0.77],
    muDry: 16,
    muWet: 10,
    permeancePerm: [0.8, 0.8],
  }),
  m('calcium silicate unit', ['calcium silicate masonry'], { lambdaWPerMK: [0.95, 0.95], muDry: 20, muWet: 15 }),
  m('concrete masonry', ['concrete block', 'concrete masonry unit'], {
    lambdaWPerMK: [1.1, 1.35],
    muDry: 55,
    muWet: 55,
    permeancePerm: [2.4, 2.4],
  }),
  m('autoclaved aerated concrete', ['aerated concrete'], { lambdaWPerMK: [0.15, 0.18], muDry: 10, muWet: 6 }),
  m('natural stone', ['stone veneer'], { lambdaWPerMK: [2.3, 2.8], muDry: 10000, muWet: 200 }),
  m('mortar', [], { lambdaWPerMK: [0.9, 1], muDry: 20, muWet: 10 }),
  m('fiber cement', ['fiber-cement siding'], {
    lambdaWPerMK: [0.25, 0.45],
    muDry: 100,
    muWet: 50,
    permeancePerm: [1, 2],
  }),
  m('vinyl siding', ['vinyl cladding'], { lambdaWPerMK: [0.17, 0.17] }),
  m('glass', ['spandrel glass'], { lambdaWPerMK: [1, 1], permeancePerm: [0, 0] }),
  m('air space', ['air cavity', 'ventilated gap'], { permeabilityPermIn: [120, 120] }),
];

export const GENERIC_MATERIALS: readonly GenericMaterial[] = [
  ...BOARDS,
  ...INSULATION.map((i) => ({ ...i, insulation: true as const })),
  ...SHEETS,
  ...MASS,
];
