/**
 * The conditions tables: continuous insulation that goes with a class III or a class II interior retarder, and
 * the sheathings that vented cladding may stand over. R-values as the codes print them, ft2 h degF/Btu.
 */
import { atSecondHand, fromMemory, type CodeSource } from './code-source.js';
import type { TableZone } from './permitted-tables.js';

export type SheathingKind = 'wood panel' | 'fiberboard' | 'gypsum';
export interface InsulationPair {
  /** US R-value over 2x4 and over 2x6 framing. */
  readonly r2x4: number;
  readonly r2x6: number;
  readonly source: CodeSource;
}
export interface ClassThreeRow extends InsulationPair {
  /** Sheathings under vented cladding that meet the table without insulation; none in the coldest zones. */
  readonly ventedOver: readonly SheathingKind[];
  /** A clause: what speaks against the row. */
  readonly disputed?: string;
}
export type ConditionZone = Exclude<TableZone, '1' | '2' | '3'>;

const ANY: readonly SheathingKind[] = ['wood panel', 'fiberboard', 'gypsum'];
const NO_WOOD: readonly SheathingKind[] = ['fiberboard', 'gypsum'];

/**
 * Class III conditions.
 *
 * Marine 4 and 5 of 2021 were read at second hand and agree with memory. For 6 and 7 a damaged scan shows lower
 * values than memory and trade replies that quote the table; for 8 it cannot be read. These rows stay "from
 * memory". Up to 2018 zones 7 and 8 share one row.
 */
export function classThreeRow(title: 'IRC' | 'IBC', edition: number, zone: TableZone): ClassThreeRow | undefined {
  const name = CLASS_THREE_CLAUSE[`${title} ${edition}`];
  if (name === undefined) return undefined;
  const memory = fromMemory(`${title} ${edition} ${name}`);
  const read = edition === 2021 ? atSecondHand(`${title} ${edition} ${name}`) : memory;
  switch (zone) {
    case '4':
      return title === 'IBC' && edition === 2021
        ? {
            ventedOver: ANY,
            r2x4: 2.5,
            r2x6: 3.75,
            source: read,
            disputed: 'the IRC of the same year permits class III in zone 4 without conditions',
          }
        : undefined;
    case 'marine 4':
      return { ventedOver: ANY, r2x4: 2.5, r2x6: 3.75, source: read };
    case '5':
      return { ventedOver: ANY, r2x4: 5, r2x6: 7.5, source: read };
    case '6':
      return { ventedOver: NO_WOOD, r2x4: 7.5, r2x6: 11.25, source: memory };
    case '7':
      return { ventedOver: [], r2x4: 10, r2x6: 15, source: memory };
    case '8':
      return edition < 2021
        ? { ventedOver: [], r2x4: 10, r2x6: 15, source: memory }
        : { ventedOver: [], r2x4: 12.5, r2x6: 20, source: memory };
    default:
      return undefined;
  }
}

const CLASS_THREE_CLAUSE: Readonly<Record<string, string>> = {
  'IRC 2009': 'Table R601.3.1',
  'IRC 2012': 'Table R702.7.1',
  'IRC 2015': 'Table R702.7.1',
  'IRC 2018': 'Table R702.7.1',
  'IRC 2021': 'Table R702.7(3)',
  'IBC 2015': '1405.3, class III table',
  'IBC 2018': '1404.3, class III table',
  'IBC 2021': 'Table 1404.3(3)',
};

/** Class II with foam-plastic continuous insulation, 2021 only, every value from memory. */
export function classTwoFoamRow(title: 'IRC' | 'IBC', edition: number, zone: TableZone): InsulationPair | undefined {
  if (edition !== 2021) return undefined;
  const source = fromMemory(title === 'IRC' ? 'IRC 2021 Table R702.7(4)' : 'IBC 2021 1404.3, class II table');
  switch (zone) {
    case '3':
      return { r2x4: 2, r2x6: 2, source };
    case '4':
    case 'marine 4':
    case '5':
    case '6':
      return { r2x4: 3, r2x6: 5, source };
    case '7':
      return { r2x4: 5, r2x6: 7.5, source };
    case '8':
      return { r2x4: 7.5, r2x6: 10, source };
    default:
      return undefined;
  }
}

/** Beside foam, the class II product must open up when damp: more than 1 perm in the wet cup. */
export const CLASS_TWO_WET_CUP: CodeSource = atSecondHand(
  'IRC 2021 R702.7 and IBC 2021 1404.3, note to class II with foam plastic',
);

/** Spray foam of at most this permeance, against the sheathing, counts as continuous insulation. */
export const SPRAY_FOAM_COUNTS = {
  mostPerm: 1.5,
  source: atSecondHand('IRC 2021 R702.7 and IBC 2021 1404.3, note on spray foam'),
} as const;

/** Clear air space behind brick veneer that makes it vented cladding in the sense of the table; nominal 1 in. */
export const BRICK_AIR_SPACE = {
  leastMm: 25,
  source: fromMemory('IRC 2021 R703.8.4 and R702.7, brick veneer with a clear air space'),
} as const;

/** Claddings that the table takes as vented by their shape; brick needs an air space behind it. */
export const VENTED_BY_SHAPE = {
  words: ['vinyl siding', 'vinyl cladding', 'polypropylene siding', 'horizontal aluminum siding', 'aluminum siding'],
  source: atSecondHand('IRC 2021 R702.7 and IBC 2021 1404.3, vented cladding'),
} as const;
