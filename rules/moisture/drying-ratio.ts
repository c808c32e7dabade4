import { heldForRain } from '../../src/engine/rain-storage.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { systemOf } from '../../src/model/unit-system.js';
import { permeanceFromSdNg } from '../../src/moisture/resistance.js';
import { OUTSIDE_CAUTION } from '../../src/moisture/outside-caution.js';
import { balanceOf } from '../../src/moisture/wall/balance.js';
import { coldSide } from '../../src/moisture/wall/judge.js';
import { layerAt, notesOf, wholeYearOf } from '../../src/moisture/wall/told.js';
import { permeanceText } from '../../src/moisture/words.js';
import { interiorLimit } from '../../src/vapor/conditions-met.js';
import { frameOf } from '../../src/vapor/frame.js';

const STUDY: Source = {
  basis: 'guide',
  citation: 'university course notes on a Nordic study of timber walls: five to one, inside to wind barrier',
  provenance: 'seen at second hand',
};

/** The cold side lets through several times what the warm side lets in. */
export default defineRule({
  id: 'moisture/drying-ratio',
  title: 'Ratio of vapor resistances',
  summary:
    'Where the followed year finds too much water, the wall has at least several times the vapor resistance on its warm side that it has on its cold side.',
  level: 'note',
  reads: ['wall.material', 'wall.product', 'wall.finish', 'wall.permeance', 'product.permeance', 'project.place'],
  sources: [STUDY],
  caution: `A rule of thumb for diffusion alone: air leaks and rain are left out. Local code and licensed practice govern. ${OUTSIDE_CAUTION}`,
  parameters: {
    ratio: {
      type: 'count',
      default: 5,
      meaning: 'vapor resistance of the warm side over that of the cold side',
      source: STUDY,
    },
  },
  *review({ detail, number }) {
    const frame = frameOf(detail);
    const year = frame === undefined ? undefined : wholeYearOf(detail);
    // The rule of thumb says where the balance is off; whether it matters, only the followed year tells.
    if (frame === undefined || year === undefined || year.judgement.kind === 'undecided') return;
    const { typical, kind } = year.judgement;
    const { insideSdM, outsideSdM } = balanceOf(typical.wall, typical.layers, frame);
    if (!(insideSdM > 0 && outsideSdM > 0)) return;
    const cold = coldSide(year.air);
    const [warmSdM, coldSdM] = cold === 'outside' ? [insideSdM, outsideSdM] : [outsideSdM, insideSdM];
    const wanted = number('ratio');
    const ratio = warmSdM / coldSdM;
    const system = systemOf(detail);
    const text = (sdM: number, to?: 'up' | 'down'): string => permeanceText(permeanceFromSdNg(sdM), system, to);
    const [inside, outside] = [text(insideSdM), text(outsideSdM)];
    const warm = cold === 'outside' ? 'inside' : 'outside';
    const sides = `the layers inside of "${frame.id}" have a permeance of ${inside} together, those outside of it ${outside}: a ratio of resistances of ${ratioText(ratio)} to 1 with the ${warm} as the warm side`;
    const code = interiorLimit(detail);
    const insideTold = (sdM: number): string =>
      code !== undefined && code.mostNgPerPaSM2 < permeanceFromSdNg(sdM)
        ? `${permeanceText(code.mostNgPerPaSM2, system)} (${code.words})`
        : text(sdM, 'down');
    const common = {
      at: layerAt(typical.wall, typical.worst?.plane).at,
      subject: 'ratio of vapor resistances',
      sources: [STUDY],
      required: `at least ${wanted} to 1`,
      provided: `${ratioText(ratio)} to 1`,
      notes: notesOf(year, typical.year.leftOut),
    };
    const sentence = `${sides[0]?.toUpperCase() ?? ''}${sides.slice(1)}`;
    if (ratio >= wanted || kind === 'accepted') {
      yield heldForRain(detail, {
        kind: 'pass',
        ...common,
        message:
          ratio >= wanted
            ? `${sentence}.`
            : `${sentence}. The monthly estimate over a year is within its limits all the same.`,
      });
      return;
    }
    yield {
      kind: 'fail',
      ...common,
      message: `${sentence}; the rule of thumb is ${wanted} to 1 (${STUDY.citation}).`,
      correct:
        cold === 'outside'
          ? `Give the inside a permeance of at most ${insideTold(outsideSdM * wanted)} or the outside one of at least ${text(insideSdM / wanted, 'up')}, or insulate outside.`
          : `Give the outside a permeance of at most ${text(insideSdM * wanted, 'down')} or the inside one of at least ${text(outsideSdM / wanted, 'up')}.`,
    };
  },
});

/** Two digits, and never up to the number asked for. */
function ratioText(ratio: number): string {
  const unit = 10 ** (Math.floor(Math.log10(ratio)) - 1);
  return String(Number((Math.floor(ratio / unit + 1e-9) * unit).toPrecision(2)));
}
