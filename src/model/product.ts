/** From a product document to the typed product. */
import { Entry, given } from './entry.js';
import { remembered } from './remembered.js';
import type { CompatibilityTest, EdgeBond, Family, Product, ProductLeast, WaitPurpose } from './types.js';
import type { ReadDocument } from '../reading/types.js';

/** The typed product of a checked product document; the same object each time for the same document. */
export const buildProduct = remembered((document: ReadDocument): Product => {
  const e = Entry.root(document);
  const least = e.get('least');
  const permeance = e.get('permeance');
  const temperature = e.get('temperature');
  const service = e.get('serviceTemperature');
  const product = given<Product>({
    at: { document, path: ['id'] },
    id: document.id,
    name: e.word('name')?.value ?? document.id,
    family: e.word<Family>('family')?.value ?? 'other',
    standards: e.words('standards'),
    section: e.word('section'),
    system: e.word('system'),
    dataSheet: e.word('dataSheet'),
    edge: e.word<EdgeBond>('edge'),
    wetFilmUm: e.quantity('wetFilm', 'film'),
    dryFilmUm: e.quantity('dryFilm', 'film'),
    maxWetPerCoatUm: e.quantity('maxWetPerCoat', 'film'),
    volumeSolids: e.quantity('volumeSolids', 'fraction'),
    coverageM2PerL: e.quantity('coverage', 'coverage'),
    permeanceDry: permeance?.quantity('dry', 'permeance'),
    permeanceWet: permeance?.quantity('wet', 'permeance'),
    permeanceAtFilmUm: permeance?.quantity('atFilm', 'film'),
    permeanceMethod: permeance?.word('method'),
    vaporRetarderClass: e.word<'I' | 'II' | 'III'>('vaporRetarderClass'),
    responsive: e.truth('responsive'),
    airPermeance: e.quantity('airPermeance', 'airLeakage'),
    airPermeanceMethod: e.word('airPermeanceMethod'),
    thermalResistance: e.quantity('rValue', 'thermalResistance'),
    least:
      least === undefined
        ? {}
        : given<ProductLeast>({
            ontoWallMm: least.length('ontoWall'),
            intoOpeningMm: least.length('intoOpening'),
            pastJambsMm: least.length('pastJambs'),
            coverEachSideMm: least.length('coverEachSide'),
            collarMm: least.length('collar'),
            bearingMm: least.length('bearing'),
            lapMm: least.length('lap'),
            endLapMm: least.length('endLap'),
            cornerLegMm: least.length('cornerLeg'),
          }),
    jointWidthMm: e.length('jointWidth'),
    maxGapMm: e.length('maxGap'),
    movement: e.quantity('movement', 'movement'),
    cell: e.word<'closed' | 'open' | 'bi-cell'>('cell'),
    expansion: e.word<'low' | 'high'>('expansion'),
    waits: e.items('waits').flatMap((w) => {
      const before = w.word<WaitPurpose>('before');
      const timeS = w.quantity('time', 'time');
      const atC = w.quantity('at', 'temperature');
      return before === undefined || timeS === undefined
        ? []
        : [given<Product['waits'][number]>({ before, timeS, atC })];
    }),
    exposureLimitS: e.quantity('exposureLimit', 'time'),
    temperatureMinC: temperature?.quantity('min', 'temperature'),
    temperatureMaxC: temperature?.quantity('max', 'temperature'),
    serviceMinC: service?.quantity('min', 'temperature'),
    serviceMaxC: service?.quantity('max', 'temperature'),
    substrates: e.words('substrates'),
    compatibleWith: e.words('compatibleWith'),
    testedWith: e.items('testedWith').flatMap((t): CompatibilityTest[] => {
      const other = t.word('product');
      const report = t.word('report');
      return other === undefined || report === undefined ? [] : [{ product: other, report }];
    }),
    notCompatibleWith: e.words('notCompatibleWith'),
    sources: e.pairs('sources').flatMap(([value, place]) => (place.value === null ? [] : [{ value, at: place.at }])),
    rollWidthMm: e.length('roll'),
    combustible: e.truth('combustible'),
  });
  return product;
});
