/**
 * The typed wall: what a detail and the documents it refers to say, in trade words, with positions.
 *
 * Every value keeps the place it was written at, so that a rule points by handing on `thing.at`.
 */
import type { Locus } from '../reading/types.js';
import type { Quantity } from '../quantity/types.js';
import type { Property, Subject } from './measures.js';

/** A quantity as written, with its place. `value` is in the base unit that the field's name ends in. */
export interface Measured extends Quantity {
  readonly at: Locus;
}
/** A word, truth value or count as written, with its place. */
export interface Stated<T> {
  readonly value: T;
  readonly at: Locus;
}

export const FAMILIES = [
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
  'sealant',
  'backer rod',
  'spray foam',
  'primer',
  'sheathing',
  'insulating sheathing',
  'batt insulation',
  'board insulation',
  'vapor retarder',
  'interior board',
  'paint',
  'cladding',
  'air space',
  'framing',
  'concrete',
  'masonry',
  'drainage mat',
  'boot',
  'other',
] as const;
export type Family = (typeof FAMILIES)[number];

export const PLACES = [
  'sill',
  'jambs',
  'left jamb',
  'right jamb',
  'head',
  'inside corners',
  'opening edges',
  'sheathing joints',
  'fastener heads',
  'field',
  'field below sill',
  'field above sill',
  'opening',
  'flange head',
  'flange jambs',
  'flange sill',
  'interior perimeter',
  'exterior perimeter',
  'penetration',
  'base of wall',
  'top of wall',
  'inside corner of building',
  'outside corner of building',
  'movement joint',
  'lintel',
  'shelf angle',
  'interior face',
] as const;
export type Place = (typeof PLACES)[number];

export const SIDES = ['head', 'left jamb', 'right jamb', 'sill'] as const;
export type Side = (typeof SIDES)[number];

export type EdgeBond = 'open' | 'sealed' | 'bonded';
export type Control = 'water' | 'air' | 'vapor' | 'thermal';

/** What a data sheet declares. Absent fields were not declared. */
export interface Product {
  readonly at: Locus;
  readonly id: string;
  readonly name: string;
  readonly family: Family;
  readonly standards: readonly Stated<string>[];
  readonly section?: Stated<string>;
  readonly dataSheet?: Stated<string>;
  /** Tested system it is sold as a part of. */
  readonly system?: Stated<string>;
  /** Of its exposed edge once installed; default by family (see `defaultEdge`). */
  readonly edge?: Stated<EdgeBond>;
  readonly wetFilmUm?: Measured;
  readonly dryFilmUm?: Measured;
  readonly maxWetPerCoatUm?: Measured;
  readonly volumeSolids?: Measured;
  readonly coverageM2PerL?: Measured; // at the wet film asked for, without loss
  readonly permeanceDry?: Measured; // ng/(Pa s m2), ASTM E96 procedure A
  readonly permeanceWet?: Measured; // ng/(Pa s m2), ASTM E96 procedure B
  readonly permeanceAtFilmUm?: Measured;
  readonly permeanceMethod?: Stated<string>;
  readonly vaporRetarderClass?: Stated<'I' | 'II' | 'III'>;
  readonly responsive?: Stated<boolean>;
  readonly airPermeance?: Measured; // L/(s m2) at 75 Pa
  readonly airPermeanceMethod?: Stated<string>;
  readonly thermalResistance?: Measured; // m2 K/W of the product as sold
  readonly least: ProductLeast;
  readonly jointWidthMm?: Measured; // range or bound
  readonly maxGapMm?: Measured;
  readonly movement?: Measured; // ratio
  readonly cell?: Stated<'closed' | 'open' | 'bi-cell'>;
  readonly expansion?: Stated<'low' | 'high'>;
  readonly waits: readonly {
    readonly before: Stated<WaitPurpose>;
    readonly timeS: Measured;
    readonly atC?: Measured;
  }[];
  readonly exposureLimitS?: Measured;
  readonly temperatureMinC?: Measured;
  readonly temperatureMaxC?: Measured;
  readonly serviceMinC?: Measured;
  readonly serviceMaxC?: Measured;
  readonly substrates: readonly Stated<string>[];
  /** Ids or families of other products. */
  readonly compatibleWith: readonly Stated<string>[];
  readonly testedWith: readonly CompatibilityTest[];
  /** Ids or families of other products. */
  readonly notCompatibleWith: readonly Stated<string>[];
  /** Names of values, a dot before a field inside another, each at the place that says where it stands. */
  readonly sources: readonly Stated<string>[];
  readonly rollWidthMm?: Measured;
  readonly combustible?: Stated<boolean>;
}
/** Two products tested with each other; `product` is the id of the other. */
export interface CompatibilityTest {
  readonly product: Stated<string>;
  readonly report: Stated<string>;
}
export type WaitPurpose = 'recoat' | 'cover' | 'water test' | 'unit' | 'next work';

/** Least sizes the data sheet asks for, base unit mm. */
export interface ProductLeast {
  readonly ontoWallMm?: Measured;
  readonly intoOpeningMm?: Measured;
  readonly pastJambsMm?: Measured;
  readonly coverEachSideMm?: Measured;
  readonly collarMm?: Measured;
  readonly bearingMm?: Measured;
  readonly lapMm?: Measured;
  readonly endLapMm?: Measured;
  readonly cornerLegMm?: Measured;
}

export interface Layer {
  readonly at: Locus;
  readonly index: number; // 0 is the innermost
  readonly id: string;
  readonly material?: Stated<string>;
  readonly product?: Product;
  readonly productId?: Stated<string>;
  readonly family: Family;
  readonly thicknessMm?: Measured;
  readonly wetFilmUm?: Measured;
  readonly dryFilmUm?: Measured;
  readonly finish?: Stated<string>;
  readonly framing?: {
    readonly at: Locus;
    readonly material: 'wood' | 'steel';
    readonly spacingMm?: Measured;
    readonly depthMm?: Measured;
  };
  readonly sheet?: {
    readonly at: Locus;
    readonly widthMm: Measured;
    readonly heightMm: Measured;
    readonly fromRightMm?: number;
    readonly fromUpMm?: number;
  };
  readonly drained?: Stated<boolean>;
  readonly vented?: Stated<boolean>;
  readonly thermalResistance?: Measured;
  readonly permeance?: Measured;
  readonly continuous?: Stated<boolean>;
  readonly controls: readonly Stated<Control>[];
  readonly standards: readonly Stated<string>[];
}

export interface Opening {
  readonly at: Locus;
  readonly index: number;
  readonly id: string;
  readonly type: string; // window, door, storefront, louver, ...
  readonly widthMm: Measured;
  readonly heightMm: Measured;
  readonly depthMm?: Measured;
  /** Lower left corner of the rough opening from the origin. */
  readonly rightMm: number;
  readonly upMm: number;
  readonly unit?: Unit;
  readonly overhang?: { readonly at: Locus; readonly projectionMm: Measured; readonly dropMm: Measured };
  /** What carries the masonry veneer over it. */
  readonly lintel?: {
    readonly at: Locus;
    readonly material: Stated<string>;
    readonly bearingMm?: Measured; // on the veneer beyond each jamb
    readonly carriedBy?: Stated<'veneer' | 'structure'>;
  };
  readonly accessible?: Stated<boolean>;
  readonly thresholdMm?: Measured;
  readonly panAlternative?: Stated<string>;
}

export interface Unit {
  readonly at: Locus;
  readonly mounting?: Stated<'flange' | 'recessed'>;
  readonly flangeMm?: Measured;
  readonly frameDepthMm?: Measured;
  /** Outer face of the frame, inward from the face of the layer that carries the barrier. */
  readonly setBackMm?: Measured;
  readonly performanceClass?: Stated<'R' | 'LC' | 'CW' | 'AW'>;
  readonly gradePa?: Measured;
  readonly waterTestPa?: Measured;
  readonly standards: readonly Stated<string>[];
}

export interface Penetration {
  readonly at: Locus;
  readonly index: number;
  readonly id: string;
  readonly type: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Center from the origin. */
  readonly rightMm: number;
  readonly upMm: number;
  readonly gapMm?: Measured;
  readonly selfSealing?: Stated<string>;
}

export interface JointShape {
  readonly at: Locus;
  readonly widthMm?: Measured;
  readonly depthMm?: Measured;
  readonly backerRodMm?: Measured;
  readonly back?: Stated<'backer rod' | 'bond-breaker tape' | 'none'>;
}

interface WorkBase {
  readonly at: Locus;
  /** Place in the order of work, from 0. */
  readonly step: number;
  readonly id: string;
  readonly trade?: Stated<string>;
  readonly waitS?: Measured;
  readonly note?: Stated<string>;
}

/** Material put somewhere. */
export interface Apply extends WorkBase {
  readonly action: 'apply';
  readonly places: readonly Stated<Place>[];
  /** Openings or penetrations it belongs to; all of them when the author names none. */
  readonly of: readonly Stated<string>[];
  readonly openings: readonly Opening[];
  readonly penetrations: readonly Penetration[];
  readonly product?: Product;
  readonly productId?: Stated<string>;
  readonly layer?: Layer;
  /** As written, for work of a generic material. */
  readonly material?: Stated<string>;
  readonly family: Family;
  readonly extendsMm?: Measured;
  readonly offCenterMm?: Measured;
  readonly ontoWallMm?: Measured;
  readonly intoOpeningMm?: Measured | 'full';
  readonly pastJambsMm?: Measured;
  readonly aboveHeadMm?: Measured;
  readonly belowSillMm?: Measured;
  readonly downJambsMm?: Measured;
  readonly slope?: Measured;
  readonly backDamMm?: Measured;
  readonly endDamsMm?: Measured;
  readonly corners?: Stated<'preformed' | 'soldered' | 'fluid-applied' | 'formed membrane' | 'folded'>;
  readonly upstandMm?: Measured;
  readonly projectsMm?: Measured;
  readonly bearingMm?: Measured;
  readonly slackMm?: Measured;
  readonly unbondedMm?: Measured;
  readonly movementMm?: Measured;
  readonly aboveGradeMm?: Measured;
  readonly ontoFoundationMm?: Measured;
  readonly exposedFoundationMm?: Measured;
  readonly lapsOnto: readonly { readonly onto: string; readonly lapMm: Measured }[];
  readonly tuckedUnder: readonly Stated<string>[];
  readonly rollMm?: Measured;
  readonly courseLapMm?: Measured;
  readonly endLapMm?: Measured;
  readonly courses?: Stated<'bottom up' | 'top down'>;
  readonly edge?: Stated<EdgeBond>;
  readonly edgeSeal?: Stated<string>;
  readonly wetFilmUm?: Measured;
  readonly dryFilmUm?: Measured;
  readonly coats?: Stated<number>;
  readonly thinner?: Measured;
  readonly joint?: JointShape;
  readonly bondedFaces?: Stated<number>;
  readonly sides: readonly Stated<Side>[];
  readonly cornersContinuous?: Stated<boolean>;
  readonly sealPosition?: Stated<'at back dam' | 'inboard of back dam' | 'outboard of back dam'>;
  readonly fillsCavity?: Stated<boolean>;
  readonly weeps?: {
    readonly at: Locus;
    /** How the weeps of a veneer are made. */
    readonly type?: Stated<'open head joints' | 'tubes' | 'wicks'>;
    readonly count?: Stated<number>;
    readonly spacingMm?: Measured;
    readonly sizeMm?: Measured;
  };
  readonly fastenersThroughPan?: Stated<'none' | 'sealed upstand' | 'through pan'>;
}

/** A unit or a penetration put in. */
export interface SetIn extends WorkBase {
  readonly action: 'set';
  readonly sets: 'unit' | 'penetration';
  readonly of: readonly Stated<string>[];
  readonly openings: readonly Opening[];
  readonly penetrations: readonly Penetration[];
  readonly bedding: Partial<Record<'head' | 'jambs' | 'sill', Stated<'sealed' | 'open' | 'interrupted'>>>;
  readonly beddingAt?: Locus;
  readonly openLengthMm?: Measured;
  readonly shims?: {
    readonly at: Locus;
    readonly material?: Stated<string>;
    readonly continuous?: Stated<boolean>;
    readonly gapMm?: Measured;
  };
  readonly anchors?: Stated<'jambs' | 'head and jambs' | 'through pan' | 'sealed upstand'>;
}

/** A flap of the barrier that was held up is lapped down. */
export interface Close extends WorkBase {
  readonly action: 'close';
  readonly closes: 'head flap';
  readonly of: readonly Stated<string>[];
  readonly openings: readonly Opening[];
  readonly endsSealed?: Stated<boolean>;
}

/** Work stops until something was looked at or tested. */
export interface Hold extends WorkBase {
  readonly action: 'hold';
  readonly holds: Stated<HoldFor>;
  /** Steps that are held; all earlier ones when none is named. */
  readonly of: readonly Stated<string>[];
  readonly by?: Stated<string>;
  readonly accept?: Stated<string>;
  readonly method?: Stated<string>;
}
export const HOLDS = [
  'substrate acceptance',
  'visual check',
  'film readings',
  'adhesion test',
  'pan water check',
  'water test',
  'air leakage check',
  'mock-up acceptance',
] as const;
export type HoldFor = (typeof HOLDS)[number];

export type Work = Apply | SetIn | Close | Hold;

/** How the drawn piece of wall ends on one side, and what ties it in there. */
export interface WallEdge {
  readonly at: Locus;
  readonly side: 'top' | 'bottom' | 'left' | 'right';
  readonly meets: Stated<string>; // roof, foundation, floor line, expansion joint, other wall, same wall
  readonly tieIn?: Stated<string>; // detail id or work id
}

export interface Project {
  readonly at: Locus;
  readonly id: string;
  readonly title: string;
  readonly zone?: Stated<string>; // 5A, 4C, 4
  readonly county?: Stated<string>;
  readonly state?: Stated<string>;
  readonly station?: Stated<string>;
  readonly code?: { readonly at: Locus; readonly title: 'IRC' | 'IBC' | 'NBC'; readonly edition: number };
  readonly heightMm?: Measured;
  readonly designPressurePa?: Measured;
  readonly indoor?: IndoorDeclared;
  readonly constructionType?: Stated<string>; // I to V, with its letter
  /** Planned for the work on site. */
  readonly uncoveredS?: Measured;
  readonly workMinC?: Measured;
  readonly workMaxC?: Measured;
  readonly standards: readonly Stated<string>[];
  /** As the contract orders its sources; absent when it does not. */
  readonly precedence?: readonly Precedence[];
  /** Roles that may accept deviations and substitutions; absent when the project names none. */
  readonly acceptingRoles?: readonly Stated<string>[];
}

/** Indoor air as declared: both set points, or a humidity class. */
export interface IndoorDeclared {
  readonly at: Locus;
  readonly temperatureC?: Measured;
  readonly humidity?: Measured; // share
  readonly humidityClass?: Stated<1 | 2 | 3 | 4 | 5>;
}

/** Who may set a limit, as the words of an order of precedence. */
export const LIMIT_SOURCES = ['code', 'specification', 'product data', 'standard', 'guide', 'practice'] as const;
export type LimitSource = (typeof LIMIT_SOURCES)[number];

/** One entry of an order of precedence: where both set a limit, `source` goes before `over`. */
export interface Precedence {
  readonly at: Locus;
  readonly source: LimitSource;
  readonly over: LimitSource;
}

/** Where a requirement applies: all that is given has to hold. */
export interface Condition {
  readonly at: Locus;
  /** `5A`; a digit alone stands for all its moisture regimes. */
  readonly zones?: readonly string[];
  readonly heightAboveMm?: Measured;
  readonly heightUpToMm?: Measured;
  readonly framing?: 'wood' | 'steel';
  readonly family?: Family;
  readonly mounting?: 'flange' | 'recessed';
}

/** One requirement of a document of the project: a limit on a property or a characteristic, or a text alone. */
export interface Requirement {
  readonly at: Locus;
  readonly paragraph?: Stated<string>;
  readonly property?: Property;
  /** In the words of the section, where no check knows the property. */
  readonly characteristic?: Stated<string>;
  /** Every subject when absent. */
  readonly subject?: Subject;
  readonly product?: Stated<string>;
  /** Absent of a requirement in words. */
  readonly comparison?: 'at least' | 'at most' | 'equals' | 'one of';
  /** What is asked, as written, each with its place; several only of `one of`. */
  readonly asked: readonly Stated<string>[];
  /** The same as quantities, in the base unit of the property; none of a characteristic. */
  readonly values: readonly Measured[];
  readonly method?: Stated<string>;
  readonly text?: Stated<string>;
  readonly when?: Condition;
  /** False of what a reading of the text only proposed: nothing passes or fails by it. */
  readonly confirmed: boolean;
  readonly citation: string; // Section 07 27 26, 3.4.B.2
  readonly basis: 'specification';
}

export const SUBMITTAL_ITEMS = [
  'product data',
  'shop drawings',
  'samples',
  'certificates',
  'test reports',
  'qualifications',
  'mock-up',
  'field quality plan',
  'manufacturer instructions',
  'compatibility statement',
  'warranty',
  'schedule',
  'closeout',
] as const;
export type SubmittalItem = (typeof SUBMITTAL_ITEMS)[number];

/** One thing a section asks to be submitted. */
export interface RequiredSubmittal {
  readonly at: Locus;
  readonly paragraph?: Stated<string>;
  readonly item: Stated<SubmittalItem>;
  /** What it is about, in the words of the section. */
  readonly of?: Stated<string>;
  readonly text?: Stated<string>;
  readonly confirmed: boolean;
  readonly citation: string;
}

/** A declared difference: from a rule, from a paragraph of the specification, or from a paragraph as one rule holds it. */
export interface Deviation {
  readonly at: Locus;
  readonly id?: string;
  readonly rule?: Stated<string>;
  readonly paragraph?: Stated<string>;
  /** Section of the paragraph; any section when absent. */
  readonly section?: string;
  /** Id of the one detail it is for; every detail when absent. */
  readonly detail?: Stated<string>;
  readonly of?: Stated<string>; // work, opening or layer id
  readonly reason: Stated<string>;
  readonly effect?: Stated<string>;
  readonly acceptedBy?: Stated<string>;
  readonly until?: Stated<string>; // ISO date
}

export interface Detail {
  readonly at: Locus;
  readonly id: string;
  readonly title: string;
  readonly section?: Stated<string>;
  readonly method?: Stated<'A' | 'A1' | 'B' | 'B1'>;
  readonly layers: readonly Layer[];
  readonly openings: readonly Opening[];
  readonly penetrations: readonly Penetration[];
  readonly work: readonly Work[];
  readonly edges: readonly WallEdge[];
  /** What the wall face shown reaches beyond the outermost openings, mm; a default is marked so. */
  readonly face: {
    readonly leftMm: number;
    readonly rightMm: number;
    readonly belowMm: number;
    readonly aboveMm: number;
    readonly assumed: boolean;
  };
  readonly drawings: readonly Stated<string>[];
  readonly drawingsAt?: Locus;
  readonly project?: Project;
  readonly requirements: readonly Requirement[];
  readonly deviations: readonly Deviation[];
  readonly products: ReadonlyMap<string, Product>;
  /** All free text of the document, for checks on wording. */
  readonly texts: readonly Stated<string>[];
}
