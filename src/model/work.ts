/** From one entry of `work` to the typed work, with what it refers to resolved. */
import { Entry, given } from './entry.js';
import { familyOfMaterial } from './families.js';
import {
  SIDES,
  type Apply,
  type Close,
  type Family,
  type Hold,
  type HoldFor,
  type JointShape,
  type Layer,
  type Opening,
  type Penetration,
  type Place,
  type Product,
  type SetIn,
  type Side,
  type Stated,
  type Work,
} from './types.js';

/** What names in a work entry can mean. Each look-up reports the problem itself when it finds nothing. */
export interface Names {
  openings(names: readonly Stated<string>[]): readonly Opening[];
  penetrations(names: readonly Stated<string>[]): readonly Penetration[];
  product(name: Stated<string>): Product | undefined;
  layer(name: Stated<string>): Layer | undefined;
}

function sides(e: Entry): Stated<Side>[] {
  return e.words('sides').flatMap((s): Stated<Side>[] => {
    if (s.value === 'jambs')
      return [
        { value: 'left jamb', at: s.at },
        { value: 'right jamb', at: s.at },
      ];
    return SIDES.includes(s.value as Side) ? [{ value: s.value as Side, at: s.at }] : [];
  });
}

function joint(e: Entry | undefined): JointShape | undefined {
  return e === undefined
    ? undefined
    : given<JointShape>({
        at: e.at,
        widthMm: e.length('width'),
        depthMm: e.length('depth'),
        backerRodMm: e.length('backerRod'),
        back: e.word<'backer rod' | 'bond-breaker tape' | 'none'>('back'),
      });
}

/** How each key of applied work becomes a field of the model: what is absent costs nothing. */
const APPLY_FIELDS: Readonly<Record<string, readonly [keyof Apply, (e: Entry, key: string) => unknown]>> = (() => {
  const length = (e: Entry, key: string): unknown => e.length(key);
  const film = (e: Entry, key: string): unknown => e.quantity(key, 'film');
  const word = (e: Entry, key: string): unknown => e.word(key);
  const truth = (e: Entry, key: string): unknown => e.truth(key);
  const count = (e: Entry, key: string): unknown => e.count(key);
  return {
    trade: ['trade', word],
    wait: ['waitS', (e, key) => e.quantity(key, 'time')],
    note: ['note', word],
    material: ['material', word],
    extends: ['extendsMm', length],
    offCenter: ['offCenterMm', length],
    ontoWall: ['ontoWallMm', length],
    intoOpening: ['intoOpeningMm', (e, key) => (e.word(key)?.value === 'full' ? 'full' : e.length(key))],
    pastJambs: ['pastJambsMm', length],
    aboveHead: ['aboveHeadMm', length],
    belowSill: ['belowSillMm', length],
    downJambs: ['downJambsMm', length],
    slope: ['slope', (e, key) => e.quantity(key, 'slope')],
    backDam: ['backDamMm', length],
    endDams: ['endDamsMm', length],
    corners: ['corners', word],
    upstand: ['upstandMm', length],
    projects: ['projectsMm', length],
    bearing: ['bearingMm', length],
    slack: ['slackMm', length],
    unbonded: ['unbondedMm', length],
    movement: ['movementMm', length],
    aboveGrade: ['aboveGradeMm', length],
    ontoFoundation: ['ontoFoundationMm', length],
    exposedFoundation: ['exposedFoundationMm', length],
    roll: ['rollMm', length],
    courseLap: ['courseLapMm', length],
    endLap: ['endLapMm', length],
    courses: ['courses', word],
    edge: ['edge', word],
    edgeSeal: ['edgeSeal', word],
    wetFilm: ['wetFilmUm', film],
    dryFilm: ['dryFilmUm', film],
    coats: ['coats', count],
    thinner: ['thinner', (e, key) => e.quantity(key, 'fraction')],
    joint: ['joint', (e, key) => joint(e.get(key))],
    bondedFaces: ['bondedFaces', count],
    cornersContinuous: ['cornersContinuous', truth],
    sealPosition: ['sealPosition', word],
    fillsCavity: ['fillsCavity', truth],
    weeps: ['weeps', (e, key) => weeps(e.get(key))],
    fasteners: ['fastenersThroughPan', word],
  };
})();

function weeps(e: Entry | undefined): Apply['weeps'] {
  return e === undefined
    ? undefined
    : given<NonNullable<Apply['weeps']>>({
        at: e.at,
        type: e.word<'open head joints' | 'tubes' | 'wicks'>('type'),
        count: e.count('count'),
        spacingMm: e.length('spacing'),
        sizeMm: e.length('size'),
      });
}

function apply(e: Entry, base: Pick<Apply, 'at' | 'step' | 'id'>, names: Names): Apply {
  const of = e.words('of');
  const places = e.words<Place>('place');
  const atPenetration = places.some((p) => p.value === 'penetration');
  const productId = e.word('product');
  const layerId = e.word('layer');
  const layer = layerId === undefined ? undefined : names.layer(layerId);
  const product = (productId === undefined ? undefined : names.product(productId)) ?? layer?.product;
  const material = e.word('material');
  const family: Family =
    e.word<Family>('family')?.value ??
    product?.family ??
    layer?.family ??
    (material === undefined ? 'other' : familyOfMaterial(material.value));
  const work = {
    action: 'apply' as const,
    at: base.at,
    step: base.step,
    id: base.id,
    places,
    of,
    family,
    product,
    productId,
    layer,
    openings: atPenetration ? [] : names.openings(of),
    penetrations: atPenetration ? names.penetrations(of) : [],
    lapsOnto: e.pairs('lapsOnto').flatMap(([onto]) => {
      const lapMm = e.get('lapsOnto')?.length(onto);
      return lapMm === undefined ? [] : [{ onto, lapMm }];
    }),
    tuckedUnder: e.words('tuckedUnder'),
    sides: sides(e),
    wetFilmUm: layer?.wetFilmUm,
    dryFilmUm: layer?.dryFilmUm,
  };
  const fields: Record<string, unknown> = work;
  for (const key of e.keys()) {
    const field = APPLY_FIELDS[key];
    if (field !== undefined) fields[field[0]] = field[1](e, key);
  }
  return given<Apply>(work);
}

function setIn(e: Entry, base: Pick<SetIn, 'at' | 'step' | 'id'>, names: Names): SetIn {
  const of = e.words('of');
  const sets = e.word<'unit' | 'penetration'>('set')?.value ?? 'unit';
  const bedding = e.get('bedding');
  const shims = e.get('shims');
  type Bedding = 'sealed' | 'open' | 'interrupted';
  return given<SetIn>({
    ...base,
    action: 'set',
    sets,
    of,
    openings: sets === 'unit' ? names.openings(of) : [],
    penetrations: sets === 'penetration' ? names.penetrations(of) : [],
    bedding:
      bedding === undefined
        ? {}
        : given<SetIn['bedding']>({
            head: bedding.word<Bedding>('head'),
            jambs: bedding.word<Bedding>('jambs'),
            sill: bedding.word<Bedding>('sill'),
          }),
    beddingAt: bedding?.at,
    openLengthMm: e.length('openLength'),
    shims:
      shims === undefined
        ? undefined
        : given<NonNullable<SetIn['shims']>>({
            at: shims.at,
            material: shims.word('material'),
            continuous: shims.truth('continuous'),
            gapMm: shims.length('gap'),
          }),
    anchors: e.word<NonNullable<SetIn['anchors']>['value']>('anchors'),
    trade: e.word('trade'),
    waitS: e.quantity('wait', 'time'),
    note: e.word('note'),
  });
}

/**
 * Types one work entry.
 *
 * @param step its place in the order of work, from 0
 */
export function buildWork(e: Entry, step: number, names: Names): Work {
  const base = { at: e.at, step, id: e.word('id')?.value ?? `step-${step + 1}` };
  const common = { trade: e.word('trade'), waitS: e.quantity('wait', 'time'), note: e.word('note') };
  if (e.has('set')) return setIn(e, base, names);
  if (e.has('close')) {
    const of = e.words('of');
    return given<Close>({
      ...base,
      ...common,
      action: 'close',
      closes: 'head flap',
      of,
      openings: names.openings(of),
      endsSealed: e.truth('endsSealed'),
    });
  }
  const holds = e.word<HoldFor>('hold');
  if (holds !== undefined) {
    return given<Hold>({
      ...base,
      ...common,
      action: 'hold',
      holds,
      of: e.words('of'),
      by: e.word('by'),
      accept: e.word('accept'),
      method: e.word('method'),
    });
  }
  return apply(e, base, names);
}
