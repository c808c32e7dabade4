import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { interiorSeals, isFibrous, openSides } from '../../src/joints/perimeter-seals.js';
import { coversSide, worksAt } from '../../src/water/at-opening.js';

const DOE: Source = {
  basis: 'guide',
  citation: 'DOE Building America Solution Center, air sealing window and door rough openings',
  provenance: 'seen',
  url: 'https://basc.pnnl.gov/resource-guides/air-sealing-window-and-door-rough-openings',
};

/** Fibrous insulation in the gap around a unit does not count as its air seal. */
export default defineRule({
  id: 'air/insulation-not-seal',
  title: 'Material of the interior air seal',
  summary: 'Fibrous insulation around a unit is not its only closure to air.',
  level: 'warning',
  reads: ['work.place', 'work.sides', 'product.family'],
  sources: [DOE],
  *review({ detail }) {
    for (const opening of detail.openings) {
      const open = openSides(interiorSeals(detail, opening));
      for (const filling of worksAt(detail, opening, 'interior perimeter').filter(isFibrous)) {
        const alone = open.filter((side) => coversSide(filling, side));
        const base = {
          at: filling.productId?.at ?? filling.at,
          subject: `"${filling.id}" around ${opening.id}`,
          required: 'an air seal beside the insulation',
          sources: [DOE],
        };
        yield alone.length > 0
          ? {
              kind: 'fail',
              message: `"${filling.id}" is ${filling.family} and the only thing that closes the gap of "${opening.id}" at ${alone.join(', ')}; air passes through it.`,
              provided: `${filling.family} alone`,
              correct: 'Add sealant over backer rod, or low-expansion foam, at the interior edge.',
              ...base,
            }
          : {
              kind: 'pass',
              message: `The gap of "${opening.id}" that "${filling.id}" insulates is sealed besides.`,
              provided: 'sealed besides',
              ...base,
            };
      }
    }
  },
});
