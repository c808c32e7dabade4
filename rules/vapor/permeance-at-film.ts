import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { isFluid } from '../../src/model/families.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { deviation, installedFilm } from '../../src/vapor/tested-film.js';

const PRACTICE: Source = { basis: 'practice', citation: 'common practice', provenance: 'common practice, no source' };
const E96: Source = { basis: 'standard', citation: 'ASTM E96', provenance: 'from memory, confirm' };

/** A permeance is worth what it says only at the film it was measured on. */
export default defineRule({
  id: 'vapor/permeance-at-film',
  title: 'Permeance at the film installed',
  summary:
    'The permeance quoted for a fluid-applied layer was measured at the dry film that is installed, by a named procedure.',
  level: 'warning',
  reads: [
    'wall.permeance',
    'wall.wetFilm',
    'wall.dryFilm',
    'work.wetFilm',
    'work.dryFilm',
    'product.permeance',
    'product.volumeSolids',
  ],
  sources: [PRACTICE, E96],
  parameters: {
    deviation: {
      type: 'fraction',
      default: '10 %',
      meaning: 'how far the installed dry film may be from the tested one, as a share of the tested film',
      source: PRACTICE,
    },
  },
  *review({ detail, number }) {
    const allowed = number('deviation');
    for (const layer of detail.layers) {
      const { product } = layer;
      if (!isFluid(layer.family)) continue;
      const subject = `permeance of ${layer.id}`;
      const quoted = product?.permeanceDry ?? product?.permeanceWet;
      if (product === undefined || quoted === undefined) {
        if (layer.permeance !== undefined) {
          yield {
            kind: 'open',
            at: layer.permeance.at,
            subject,
            sources: [E96, PRACTICE],
            provided: layer.permeance.text,
            missing: ['product.permeance.dry', 'product.permeance.wet'],
            message: `The permeance ${layer.permeance.text} of "${layer.id}" names neither the procedure nor the film it was measured by; name a product that declares product.permeance.dry or product.permeance.wet with its film.`,
          };
        }
        continue;
      }
      const tested = product.permeanceAtFilmUm;
      const film = installedFilm(detail, layer, product);
      const missing = [
        ...(tested === undefined ? ['product.permeance.atFilm'] : []),
        ...(film.kind === 'unknown' ? film.missing : []),
      ];
      const related = [
        {
          message: `permeance ${quoted.text} by ASTM E96 procedure ${product.permeanceDry === undefined ? 'B' : 'A'}`,
          at: quoted.at,
        },
      ];
      if (tested === undefined || film.kind === 'unknown' || !(tested.value > 0)) {
        yield {
          kind: 'open',
          at: layer.at,
          subject,
          related,
          sources: [PRACTICE, E96],
          provided: quoted.text,
          missing: missing.length === 0 ? ['product.permeance.atFilm'] : missing,
          message: `Whether the permeance ${quoted.text} of "${layer.id}" holds for the film installed cannot be told; state ${(missing.length === 0 ? ['product.permeance.atFilm'] : missing).join(', ')}.`,
        };
        continue;
      }
      const { leastUm, mostUm, stated, volumeSolids, coats } = film.film;
      const off = deviation(film.film, tested.value);
      const like = tested;
      const write = (um: number): string => formatQuantity(um, 'film', like);
      const installed = `${leastUm === mostUm ? write(leastUm) : `${write(leastUm)} to ${write(mostUm)}`}${volumeSolids === undefined ? '' : ` (${stated.text} wet at ${formatQuantity(volumeSolids, 'fraction')} volume solids)`}${coats === undefined ? '' : ` in ${coats} coats`}`;
      const required = `${write(tested.value * (1 - allowed))} to ${write(tested.value * (1 + allowed))} dry`;
      const met = Math.abs(off) <= allowed + 1e-9;
      const share = formatQuantity(Math.abs(off), 'fraction');
      yield {
        kind: met ? 'pass' : 'fail',
        at: stated.at,
        subject,
        required,
        provided: installed,
        related,
        sources: [PRACTICE, E96],
        message: met
          ? `"${layer.id}" goes on at a dry film of ${installed}, within ${formatQuantity(allowed, 'fraction')} of the ${tested.text} at which ${quoted.text} was measured.`
          : `"${layer.id}" goes on at a dry film of ${installed}, ${share} ${off > 0 ? 'more' : 'less'} than the ${tested.text} at which ${quoted.text} was measured; within ${formatQuantity(allowed, 'fraction')} is expected (common practice).`,
        ...(met ? {} : { correct: `Apply ${required}, or quote the permeance measured at the film installed.` }),
      };
    }
  },
});
