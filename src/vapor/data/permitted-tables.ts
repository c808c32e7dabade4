/**
 * Which class of interior vapor retarder each code edition permits in each climate zone, one source per cell.
 *
 * Editions after 2021 are left out: their changes could not be confirmed.
 */
import { atSecondHand, fromMemory, seen, type CodeSource } from './code-source.js';

/** Zone as the tables have it: thermal zone 4 is split, because its marine part counts with the cold zones. */
export type TableZone = '1' | '2' | '3' | '4' | 'marine 4' | '5' | '6' | '7' | '8';
export type TableClass = 'I' | 'II' | 'III';
/** `conditions`: permitted only with vented cladding or enough continuous insulation. */
export type Permission = 'yes' | 'no' | 'conditions';

export interface PermittedCell {
  readonly permission: Permission;
  readonly source: CodeSource;
}
export type PermittedTable = Readonly<Record<TableZone, Readonly<Record<TableClass, PermittedCell>>>>;

export interface EditionTables {
  readonly title: 'IRC' | 'IBC';
  readonly edition: number;
  readonly permitted: PermittedTable;
  /** The zones where an interior retarder must be there at all. */
  readonly required: { readonly zones: readonly TableZone[]; readonly source: CodeSource };
}

const COLD: readonly TableZone[] = ['marine 4', '5', '6', '7', '8'];
const ZONES: readonly TableZone[] = ['1', '2', '3', '4', 'marine 4', '5', '6', '7', '8'];

type Row = readonly [I: Permission, II: Permission, III: Permission];

function table(row: (zone: TableZone) => Row, source: (zone: TableZone) => CodeSource): PermittedTable {
  const rows = ZONES.map((zone) => {
    const [I, II, III] = row(zone);
    const cell = (permission: Permission): PermittedCell => ({ permission, source: source(zone) });
    return [zone, { I: cell(I), II: cell(II), III: cell(III) }] as const;
  });
  return Object.fromEntries(rows) as PermittedTable;
}

/** Before the permission tables: class I and II everywhere, class III in the warm zones, elsewhere under conditions. */
const OLDER = (zone: TableZone): Row => ['yes', 'yes', COLD.includes(zone) ? 'conditions' : 'yes'];

/** Hot zones keep the inside open to drying: no class I or II in 1 and 2, no class I in 3 and 4. */
const HOT_BARRED = (zone: TableZone): Row => {
  if (zone === '1' || zone === '2') return ['no', 'no', 'yes'];
  if (zone === '3' || zone === '4') return ['no', 'yes', 'yes'];
  return ['yes', 'yes', 'conditions'];
};

/** The building code of 2021 puts class III under conditions in all of zone 4. */
const IBC_2021 = (zone: TableZone): Row => (zone === '4' ? ['no', 'yes', 'conditions'] : HOT_BARRED(zone));

function older(title: 'IRC' | 'IBC', edition: number, clause: string, required: CodeSource): EditionTables {
  return {
    title,
    edition,
    permitted: table(OLDER, () => fromMemory(`${title} ${edition} ${clause}`)),
    required: { zones: COLD, source: required },
  };
}

export const EDITIONS: readonly EditionTables[] = [
  older(
    'IRC',
    2009,
    'R601.3',
    atSecondHand('IRC 2009 R601.3', 'https://www.greenbuildingadvisor.com/blogs/dept/code-green/vapor-retarders'),
  ),
  ...[2012, 2015, 2018].map((edition) => older('IRC', edition, 'R702.7', fromMemory(`IRC ${edition} R702.7`))),
  {
    title: 'IRC',
    edition: 2021,
    permitted: table(HOT_BARRED, (zone) =>
      zone === '1' ? seen('IRC 2021 Table R702.7(2)') : fromMemory('IRC 2021 Table R702.7(2)'),
    ),
    required: { zones: COLD, source: fromMemory('IRC 2021 R702.7') },
  },
  older('IBC', 2015, '1405.3', fromMemory('IBC 2015 1405.3')),
  {
    title: 'IBC',
    edition: 2018,
    permitted: table(HOT_BARRED, () => fromMemory('IBC 2018 1404.3')),
    required: { zones: COLD, source: fromMemory('IBC 2018 1404.3') },
  },
  {
    title: 'IBC',
    edition: 2021,
    permitted: table(IBC_2021, () => atSecondHand('IBC 2021 Table 1404.3(2)')),
    required: { zones: COLD, source: fromMemory('IBC 2021 1404.3') },
  },
];

/** Canada: the vapor barrier of a framed wall passes no more than this; read in course notes on the Ontario code. */
export const NBC_BARRIER = {
  mostNgPerPaSM2: 60,
  text: '60 ng/(Pa s m2)',
  source: atSecondHand('NBC 9.25, vapor barrier'),
} as const;

/** A retarder that passes more than 1 perm when damp may stand inside in every zone. */
export const RESPONSIVE_ALLOWED: CodeSource = atSecondHand(
  'IRC 2021 R702.7 and IBC 2021 1404.3, note on responsive retarders',
);
