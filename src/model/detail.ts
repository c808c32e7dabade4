/**
 * From a checked detail document, with the documents it refers to, to the typed detail.
 *
 * What a schema cannot say is checked here: names that must exist, openings that must not overlap, sizes that
 * must not be zero, flaps that can only be lifted once they hang.
 */
import { Entry, given } from './entry.js';
import { familyOfMaterial } from './families.js';
import { nearest } from './nearest.js';
import { buildProduct } from './product.js';
import { remembered } from './remembered.js';
import { buildDeviations, buildProject } from './project.js';
import { buildRequirements } from './specification.js';
import { buildWork, type Names } from './work.js';
import type { Control, Detail, Family, Layer, Opening, Penetration, Product, Stated, Unit, WallEdge } from './types.js';
import type { Locus, ReadDocument, ReadingProblem } from '../reading/types.js';

/** Documents that a detail reaches: its own file, its project and what these list. */
export interface Reach {
  readonly project?: ReadDocument;
  readonly products: ReadonlyMap<string, ReadDocument>;
  readonly specifications: readonly ReadDocument[];
  readonly settings?: ReadDocument;
  /** Submittals that hold the detail: the deviations they declare are those of the detail too. */
  readonly submittals?: readonly ReadDocument[];
}

export interface BuiltDetail {
  /** Absent when a problem makes the detail meaningless. */
  readonly detail?: Detail;
  readonly problems: readonly ReadingProblem[];
}

/** Details with the same reach share one map of typed products. */
const productsIn = remembered(
  (documents: ReadonlyMap<string, ReadDocument>): ReadonlyMap<string, Product> =>
    new Map([...documents].map(([id, document]) => [id, buildProduct(document)])),
);

/** Shown around the openings when the author does not say: an arm's length. */
const FACE_MARGIN_MM = 914.4;

/**
 * Builds the typed detail.
 *
 * @param elsewhere where a product that is out of reach stands after all, to name it in the message
 */
export function buildDetail(
  document: ReadDocument,
  reach: Reach,
  elsewhere?: (productId: string) => ReadDocument | undefined,
): BuiltDetail {
  const e = Entry.root(document);
  const problems: ReadingProblem[] = [];
  const report = (
    code: ReadingProblem['code'],
    at: Locus,
    message: string,
    related?: { message: string; at: Locus },
  ): void => {
    problems.push(
      given<ReadingProblem>({
        code,
        message,
        file: at.document.file,
        span: at.document.spanOf(at.path, at.part),
        related:
          related === undefined
            ? undefined
            : [
                {
                  message: related.message,
                  file: related.at.document.file,
                  span: related.at.document.spanOf(related.at.path, related.at.part),
                },
              ],
      }),
    );
  };
  const products = productsIn(reach.products);
  const findProduct = (name: Stated<string>): Product | undefined => {
    const product = products.get(name.value);
    if (product !== undefined) return product;
    const other = elsewhere?.(name.value);
    const close = nearest(name.value, [...products.keys()]);
    const help =
      other !== undefined
        ? `${other.file.uri} holds it: list that file under "documents" of the project`
        : close !== undefined
          ? `did you mean "${close}"?`
          : products.size === 0
            ? 'no product document is in reach: list product files under "documents" of the project or of this detail'
            : `products in reach: ${[...products.keys()].sort().slice(0, 12).join(', ')}`;
    report('unknown-reference', name.at, `No product "${name.value}" is in reach of this detail; ${sentence(help)}`);
    return undefined;
  };

  const layers = e.items('wall').map((l, index) => buildLayer(l, index, findProduct));
  const openings = e.items('openings').map(buildOpening);
  const penetrations = e.items('penetrations').map(buildPenetration);
  repeated(layers, 'layer', report);
  repeated(openings, 'opening', report);
  repeated(penetrations, 'penetration', report);
  checkSizes(openings, penetrations, report);

  const resolve =
    <T extends { readonly id: string }>(what: string, all: readonly T[]) =>
    (names: readonly Stated<string>[]): readonly T[] =>
      names.length === 0
        ? all
        : names.flatMap((name) => {
            const found = all.find((x) => x.id === name.value);
            if (found === undefined) {
              const close = nearest(
                name.value,
                all.map((x) => x.id),
              );
              const known =
                all.length === 0
                  ? `this detail declares no ${what}s`
                  : close === undefined
                    ? `declared: ${all.map((x) => x.id).join(', ')}`
                    : `did you mean "${close}"?`;
              report('unknown-reference', name.at, `No ${what} "${name.value}" is declared; ${sentence(known)}`);
            }
            return found === undefined ? [] : [found];
          });
  const names: Names = {
    openings: resolve('opening', openings),
    penetrations: resolve('penetration', penetrations),
    product: findProduct,
    layer: (name) => resolve('layer', layers)([name])[0],
  };
  const work = e.items('work').map((w, step) => buildWork(w, step, names));
  repeated(work, 'work', report);
  for (const w of work) {
    const others = w.action === 'apply' ? w.tuckedUnder : w.action === 'hold' ? w.of : [];
    for (const name of others) {
      const meant = work.filter((x) => x.id === name.value || (x.action === 'apply' && x.layer?.id === name.value));
      if (meant.length === 0) {
        const close = nearest(
          name.value,
          work.map((x) => x.id),
        );
        report(
          'unknown-reference',
          name.at,
          `No work "${name.value}" is declared; ${sentence(close === undefined ? `declared: ${work.map((x) => x.id).join(', ')}` : `did you mean "${close}"?`)}`,
        );
      } else if (w.action === 'apply' && meant.every((x) => x.step >= w.step)) {
        report(
          'wrong-geometry',
          name.at,
          `"${w.id}" is tucked under "${name.value}", which is ${meant.some((x) => x === w) ? 'the same work' : 'not there yet'}: only what already hangs can be lifted. Put "${name.value}" earlier, or leave out "tuckedUnder": later work lies over earlier work by itself.`,
          { message: `"${name.value}" comes later`, at: (meant[0] as { at: Locus }).at },
        );
      }
    }
  }

  const face = e.get('face');
  const margin = (key: string): number => face?.length(key)?.value ?? FACE_MARGIN_MM;
  const project = reach.project === undefined ? undefined : buildProject(reach.project);
  const aroundIt = [...(reach.settings === undefined ? [] : [reach.settings]), ...(reach.submittals ?? [])];
  const declaredForIt = aroundIt
    .flatMap(buildDeviations)
    .filter((d) => d.detail === undefined || d.detail.value === document.id);
  const detail = given<Detail>({
    at: { document, path: [] },
    id: document.id,
    title: e.word('title')?.value ?? document.id,
    section: e.word('section'),
    method: e.word<'A' | 'A1' | 'B' | 'B1'>('method'),
    layers,
    openings,
    penetrations,
    work,
    edges:
      allSidesSame(e) ??
      e.pairs('edges').map(([side, edge]) =>
        given<WallEdge>({
          at: edge.at,
          side: side as WallEdge['side'],
          meets: edge.word('meets') ?? { value: 'same wall', at: edge.at },
          tieIn: edge.word('tieIn'),
        }),
      ),
    face: {
      leftMm: margin('left'),
      rightMm: margin('right'),
      belowMm: margin('below'),
      aboveMm: margin('above'),
      assumed: face === undefined,
    },
    drawings: e.words('drawings'),
    drawingsAt: e.get('drawings')?.at,
    project,
    requirements: reach.specifications.flatMap(buildRequirements),
    deviations: [...buildDeviations(document), ...declaredForIt],
    products,
    texts: freeTexts(e),
  });
  return problems.length > 0 ? { problems } : { detail, problems };
}

/** Ends a sentence, unless it ends already. */
const sentence = (text: string): string => (text.endsWith('?') ? text : `${text}.`);

type Report = (
  code: ReadingProblem['code'],
  at: Locus,
  message: string,
  related?: { message: string; at: Locus },
) => void;

function repeated(things: readonly { readonly id: string; readonly at: Locus }[], what: string, report: Report): void {
  const first = new Map<string, Locus>();
  for (const thing of things) {
    const before = first.get(thing.id);
    if (before === undefined) first.set(thing.id, thing.at);
    else
      report('repeated-id', thing.at, `The ${what} id "${thing.id}" is used twice; give each ${what} its own id.`, {
        message: 'first used here',
        at: before,
      });
  }
}

function checkSizes(openings: readonly Opening[], penetrations: readonly Penetration[], report: Report): void {
  for (const o of openings) {
    for (const size of [o.widthMm, o.heightMm]) {
      if (!(size.value > 0))
        report(
          'wrong-geometry',
          size.at,
          `The rough opening of "${o.id}" has no size (${size.text}); width and height must be above zero.`,
        );
    }
  }
  openings.forEach((a, i) => {
    for (const b of openings.slice(i + 1)) {
      const apart =
        a.rightMm + a.widthMm.value <= b.rightMm + 0.01 ||
        b.rightMm + b.widthMm.value <= a.rightMm + 0.01 ||
        a.upMm + a.heightMm.value <= b.upMm + 0.01 ||
        b.upMm + b.heightMm.value <= a.upMm + 0.01;
      if (!apart)
        report(
          'wrong-geometry',
          b.at,
          `The openings "${a.id}" and "${b.id}" overlap; give "${b.id}" its place with "at: { right, up }" from the lower left corner of the first opening.`,
          { message: `"${a.id}" stands here`, at: a.at },
        );
    }
  });
  for (const p of penetrations) {
    if (!(p.widthMm > 0 && p.heightMm > 0))
      report('wrong-geometry', p.at, `The penetration "${p.id}" has no size; give "diameter" or "size" above zero.`);
  }
}

function buildLayer(e: Entry, index: number, findProduct: (name: Stated<string>) => Product | undefined): Layer {
  const productId = e.word('product');
  const product = productId === undefined ? undefined : findProduct(productId);
  const material = e.word('material');
  const framing = e.get('framing');
  const sheet = e.get('sheet');
  const from = sheet?.get('from');
  const width = sheet?.length('width');
  const height = sheet?.length('height');
  return given<Layer>({
    at: e.at,
    index,
    id: e.word('id')?.value ?? `layer-${index + 1}`,
    material,
    product,
    productId,
    family:
      e.word<Family>('family')?.value ??
      product?.family ??
      (material === undefined ? 'other' : familyOfMaterial(material.value)),
    thicknessMm: e.thickness('thickness'),
    wetFilmUm: e.quantity('wetFilm', 'film'),
    dryFilmUm: e.quantity('dryFilm', 'film'),
    finish: e.word('finish'),
    framing:
      framing === undefined
        ? undefined
        : given<NonNullable<Layer['framing']>>({
            at: framing.at,
            material: framing.word<'wood' | 'steel'>('material')?.value ?? 'wood',
            spacingMm: framing.length('spacing'),
            depthMm: framing.length('depth'),
          }),
    sheet:
      sheet === undefined || width === undefined || height === undefined
        ? undefined
        : given<NonNullable<Layer['sheet']>>({ at: sheet.at, widthMm: width, heightMm: height, ...sheetOrigin(from) }),
    drained: e.truth('drained'),
    vented: e.truth('vented'),
    thermalResistance: e.quantity('rValue', 'thermalResistance'),
    permeance: e.quantity('permeance', 'permeance'),
    continuous: e.truth('continuous'),
    controls: e.words<Control>('controls'),
    standards: e.words('standards'),
  });
}

/** `edges: same wall` says it of all four sides at once. */
function allSidesSame(e: Entry): WallEdge[] | undefined {
  const word = e.word('edges');
  return word === undefined
    ? undefined
    : (['top', 'bottom', 'left', 'right'] as const).map((side) => ({ at: word.at, side, meets: word }));
}

/** A place from the origin: to the right or left of it, up or down. */
function placeOf(at: Entry | undefined): { rightMm: number; upMm: number } {
  return {
    rightMm: at?.length('right')?.value ?? 0 - (at?.length('left')?.value ?? 0),
    upMm: at?.length('up')?.value ?? 0 - (at?.length('down')?.value ?? 0),
  };
}

/** Where one corner of the sheathing panels lies; absent when the author does not say. */
function sheetOrigin(from: Entry | undefined): { fromRightMm?: number; fromUpMm?: number } {
  if (from === undefined) return {};
  const { rightMm, upMm } = placeOf(from);
  return { fromRightMm: rightMm, fromUpMm: upMm };
}

function buildLintel(e: Entry | undefined): Opening['lintel'] {
  const material = e?.word('material');
  return e === undefined || material === undefined
    ? undefined
    : given<NonNullable<Opening['lintel']>>({
        at: e.at,
        material,
        bearingMm: e.length('bearing'),
        carriedBy: e.word<'veneer' | 'structure'>('carriedBy'),
      });
}

function buildOpening(e: Entry, index: number): Opening {
  const rough = e.get('roughOpening') as Entry;
  const at = e.get('at');
  const unit = e.get('unit');
  const overhang = e.get('overhang');
  const projection = overhang?.length('projection');
  const drop = overhang?.length('drop');
  const length = (key: string) => rough.length(key) as Opening['widthMm'];
  return given<Opening>({
    at: e.at,
    index,
    id: e.word('id')?.value ?? `opening-${index + 1}`,
    type: e.word('type')?.value ?? 'window',
    widthMm: length('width'),
    heightMm: length('height'),
    depthMm: rough.length('depth'),
    ...placeOf(at),
    unit:
      unit === undefined
        ? undefined
        : given<Unit>({
            at: unit.at,
            mounting: unit.word<'flange' | 'recessed'>('mounting'),
            flangeMm: unit.length('flange'),
            frameDepthMm: unit.length('frameDepth'),
            setBackMm: unit.length('setBack'),
            performanceClass: unit.word<'R' | 'LC' | 'CW' | 'AW'>('class'),
            gradePa: unit.quantity('grade', 'pressure'),
            waterTestPa: unit.quantity('waterTest', 'pressure'),
            standards: unit.words('standards'),
          }),
    overhang:
      overhang === undefined || projection === undefined || drop === undefined
        ? undefined
        : { at: overhang.at, projectionMm: projection, dropMm: drop },
    lintel: buildLintel(e.get('lintel')),
    accessible: e.truth('accessible'),
    thresholdMm: e.length('threshold'),
    panAlternative: e.word('panAlternative'),
  });
}

function buildPenetration(e: Entry, index: number): Penetration {
  const diameter = e.length('diameter')?.value;
  const size = e.get('size');
  const at = e.get('at');
  return given<Penetration>({
    at: e.at,
    index,
    id: e.word('id')?.value ?? `penetration-${index + 1}`,
    type: e.word('type')?.value ?? 'pipe',
    widthMm: diameter ?? size?.length('width')?.value ?? 0,
    heightMm: diameter ?? size?.length('height')?.value ?? 0,
    ...placeOf(at),
    gapMm: e.length('gap'),
    selfSealing: e.word('selfSealing'),
  });
}

/** Keys whose text is free wording, where a placeholder can hide. */
const FREE_TEXT = new Set([
  'title',
  'note',
  'notes',
  'accept',
  'method',
  'finish',
  'material',
  'meets',
  'by',
  'trade',
  'selfSealing',
  'panAlternative',
  'edgeSeal',
  'standards',
  'reason',
  'effect',
]);

function freeTexts(root: Entry): Stated<string>[] {
  const texts: Stated<string>[] = [];
  const walk = (value: unknown, path: readonly (string | number)[], key: string): void => {
    if (typeof value === 'string') {
      if (FREE_TEXT.has(key)) texts.push({ value, at: { document: root.document, path } });
    } else if (Array.isArray(value)) value.forEach((v: unknown, i) => walk(v, [...path, i], key));
    else if (typeof value === 'object' && value !== null)
      for (const k of Object.keys(value)) walk((value as Record<string, unknown>)[k], [...path, k], k);
  };
  walk(root.value, [], '');
  return texts;
}
