import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { isFluid } from '../../src/model/families.js';
import { productsUsed } from '../../src/model/products-used.js';
import type { Product } from '../../src/model/types.js';
import { coverageSum, drySum } from '../../src/products/film-agrees.js';
import { formatBound, formatQuantity } from '../../src/quantity/format.js';

const ARITHMETIC: Source = {
  basis: 'physics',
  citation: 'dry film = wet film x volume solids, each to the digits printed',
  provenance: 'computed',
};
const VOLUME: Source = {
  basis: 'physics',
  citation: 'coverage = volume / film; a US gallon covers 1604 ft2 at 1 mil',
  provenance: 'computed',
};
const ASK = 'Ask for a data sheet whose values agree.';

function* film(product: Product): Iterable<Outcome> {
  const { wetFilmUm: wet, dryFilmUm: dry, volumeSolids: solids } = product;
  if (wet === undefined || dry === undefined) return;
  const base = { at: wet.at, subject: `film of ${product.id}`, provided: `${dry.text} dry`, sources: [ARITHMETIC] };
  if (solids === undefined || !(solids.value > 0)) {
    yield {
      kind: 'open',
      message: `The data of "${product.id}" state ${wet.text} wet and ${dry.text} dry, and not the volume solids that would show whether they agree.`,
      missing: ['product.volumeSolids'],
      ...base,
    };
    return;
  }
  const { agrees, leastUm, mostUm } = drySum(wet, dry, solids);
  const left = formatBound({
    ...dry,
    value: leastUm,
    upper: mostUm,
    bound: mostUm - leastUm > 0.05 ? 'between' : 'exactly',
  });
  const related = [
    { message: 'dry film', at: dry.at },
    { message: 'volume solids', at: solids.at },
  ];
  const sentence = `The data of "${product.id}" state ${dry.text} dry for ${wet.text} wet; at ${solids.text} volume solids that leaves ${left}`;
  yield agrees
    ? { kind: 'pass', message: `${sentence}.`, required: `${left} dry`, related, ...base }
    : {
        kind: 'fail',
        message: `${sentence}: the three do not agree.`,
        required: `${left} dry`,
        related,
        correct: ASK,
        ...base,
      };
}

function* coverage(product: Product): Iterable<Outcome> {
  const claimed = product.coverageM2PerL;
  if (claimed === undefined) return;
  const base = { at: claimed.at, subject: `coverage of ${product.id}`, provided: claimed.text, sources: [VOLUME] };
  const sum = coverageSum(product);
  if (sum === undefined) {
    yield {
      kind: 'open',
      message: `The data of "${product.id}" claim ${claimed.text}, and state no wet film (or dry film with volume solids) to hold it against.`,
      missing: ['product.wetFilm', 'product.dryFilm', 'product.volumeSolids'],
      ...base,
    };
    return;
  }
  const most = formatQuantity(sum.mostM2PerL, 'coverage', claimed);
  const wet = formatQuantity(sum.wetUm, 'film', sum.of);
  const required = `at most ${most}`;
  const related = [{ message: 'the film asked for', at: sum.of.at }];
  yield sum.possible
    ? {
        kind: 'pass',
        message: `The coverage of "${product.id}", ${claimed.text}, leaves its ${wet} wet, which allows ${most} without loss.`,
        required,
        related,
        ...base,
      }
    : {
        kind: 'fail',
        message: `The data of "${product.id}" claim ${claimed.text}, and ${wet} wet allows no more than ${most}, without any loss: the film would be thinner.`,
        required,
        related,
        correct: `${ASK} For the quantity to order, reckon with ${most} less the loss on site.`,
        ...base,
      };
}

/** The film values of a data sheet can all be true. */
export default defineRule({
  id: 'product/film-agrees',
  title: 'Film values of a data sheet',
  summary: 'Wet film, volume solids, dry film and coverage of a data sheet can all be true.',
  level: 'warning',
  once: 'per product',
  reads: ['product.wetFilm', 'product.dryFilm', 'product.volumeSolids', 'product.coverage'],
  sources: [ARITHMETIC, VOLUME],
  *review({ detail }) {
    for (const { product } of productsUsed(detail, () => true)) {
      // Only what goes on wet has a wet film; a sheet may state its thickness as a dry film.
      if (!isFluid(product.family) && product.wetFilmUm === undefined && product.coverageM2PerL === undefined) continue;
      yield* film(product);
      yield* coverage(product);
    }
  },
});
