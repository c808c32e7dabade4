/** From one entry of `work` to the typed work, with what it refers to resolved. */
import { Entry, given } from './entry.js';
import { familyOfMaterial } from './families.js';
import {
  SIDES,
  type Apply,
  type Close,
  type EdgeBond,
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
  const into = e.word('intoOpening');
  const weeps = e.get('weeps');
  return given<Apply>({
    ...base,
    action: 'apply',
    places,
    of,
    family,
    product,
    productId,
    layer,
    openings: atPenetration ? [] : names.openings(of),
    penetrations: atPenetration ? names.penetrations(of) : [],
    trade: e.word('trade'),
    waitS: e.quantity('wait', 'time'),
    note: e.word('note'),
    extendsMm: e.length('extends'),
    offCenterMm: e.length('offCenter'),
    ontoWallMm: e.length('ontoWall'),
    intoOpeningMm: into?.value === 'full' ? 'full' : e.length('intoOpening'),
    pastJambsMm: e.length('pastJambs'),
    aboveHeadMm: e.length('aboveHead'),
    belowSillMm: e.length('belowSill'),
    downJambsMm: e.length('downJambs'),
    slope: e.quantity('slope', 'slope'),
    backDamMm: e.length('backDam'),
    endDamsMm: e.length('endDams'),
    corners: e.word<NonNullable<Apply['corners']>['value']>('corners'),
    upstandMm: e.length('upstand'),
    projectsMm: e.length('projects'),
    bearingMm: e.length('bearing'),
    slackMm: e.length('slack'),
    unbondedMm: e.length('unbonded'),
    movementMm: e.length('movement'),
    aboveGradeMm: e.length('aboveGrade'),
    ontoFoundationMm: e.length('ontoFoundation'),
    exposedFoundationMm: e.length('exposedFoundation'),
    lapsOnto: e.pairs('lapsOnto').flatMap(([onto]) => {
      const lapMm = e.get('lapsOnto')?.length(onto);
      return lapMm === undefined ? [] : [{ onto, lapMm }];
    }),
    tuckedUnder: e.words('tuckedUnder'),
    rollMm: e.length('roll'),
    courseLapMm: e.length('courseLap'),
    endLapMm: e.length('endLap'),
    courses: e.word<'bottom up' | 'top down'>('courses'),
    edge: e.word<EdgeBond>('edge'),
    edgeSeal: e.word('edgeSeal'),
    wetFilmUm: e.quantity('wetFilm', 'film') ?? layer?.wetFilmUm,
    dryFilmUm: e.quantity('dryFilm', 'film') ?? layer?.dryFilmUm,
    coats: e.count('coats'),
    thinner: e.quantity('thinner', 'fraction'),
    joint: joint(e.get('joint')),
    bondedFaces: e.count('bondedFaces'),
    sides: sides(e),
    cornersContinuous: e.truth('cornersContinuous'),
    sealPosition: e.word<NonNullable<Apply['sealPosition']>['value']>('sealPosition'),
    fillsCavity: e.truth('fillsCavity'),
    weeps:
      weeps === undefined
        ? undefined
        : given<NonNullable<Apply['weeps']>>({
            at: weeps.at,
            count: weeps.count('count'),
            spacingMm: weeps.length('spacing'),
            sizeMm: weeps.length('size'),
          }),
    fastenersThroughPan: e.word<NonNullable<Apply['fastenersThroughPan']>['value']>('fasteners'),
  });
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
