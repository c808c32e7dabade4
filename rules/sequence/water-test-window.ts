import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import {
  baseIndex,
  claddingWorks,
  declaredBetweenS,
  isField,
  layerOf,
  spotsAt,
  worksNamed,
} from '../../src/model/order.js';
import { fieldOfWork } from '../../src/model/named-field.js';
import type { Apply, Detail, Hold, Opening } from '../../src/model/types.js';

const COLUMN: Source = {
  basis: 'standard',
  citation: 'AAMA 502 and 503, test of installed units, as told in a trade association column',
  provenance: 'seen at second hand',
  url: 'https://windowanddoor.com/article/field-testing',
};
const EXTERIOR: Source = {
  basis: 'practice',
  citation: 'the interface is tested before the cladding hides it',
  provenance: 'common practice, no source',
};

/** The openings a water test is about: those of the work it names, or all. */
function testedOpenings(detail: Detail, hold: Hold): readonly Opening[] {
  const named = hold.of.flatMap((name) => worksNamed(detail, name.value));
  const theirs = detail.openings.filter((o) => named.some((w) => w.action !== 'hold' && w.openings.includes(o)));
  return theirs.length > 0 ? theirs : detail.openings;
}

/** What keeps water out around the unit and must have cured. */
function seals(detail: Detail, opening: Opening): Apply[] {
  const spots = spotsAt(detail, opening, ['flange head', 'flange jambs', 'interior perimeter', 'exterior perimeter']);
  return [
    ...new Set(spots.filter((s) => s.work.family !== 'backer rod' && s.work.family !== 'primer').map((s) => s.work)),
  ];
}

/** Interior finishes, which would hide a leak. */
function finishes(detail: Detail): Apply[] {
  const base = baseIndex(detail);
  return detail.work.filter((w): w is Apply => {
    if (w.action !== 'apply') return false;
    if (w.places.some((p) => p.value === 'interior face')) return true;
    const layer = isField(w) ? layerOf(detail, w) : undefined;
    return layer !== undefined && layer.index < base && (layer.family === 'interior board' || layer.family === 'paint');
  });
}

function* cured(detail: Detail, hold: Hold, seal: Apply): Iterable<Outcome> {
  const subject = `cure of ${seal.id} before ${hold.id}`;
  const related = [{ message: 'water test', at: hold.at }];
  const times = (seal.product?.waits ?? [])
    .filter((w) => w.before.value === 'water test')
    .map((w) => w.timeS)
    .sort((a, b) => b.value - a.value);
  const given = declaredBetweenS(detail, seal, hold);
  const longest = times[0];
  if (given === undefined) {
    const asked =
      longest === undefined ? '' : `; the data sheet of "${seal.product?.id ?? ''}" asks for ${longest.text}`;
    yield {
      kind: 'open',
      at: seal.at,
      subject,
      related,
      message: `No wait is declared between "${seal.id}" and the water test "${hold.id}"${asked}: state "wait".`,
      missing: [fieldOfWork(seal, 'wait')],
      sources: [COLUMN],
    };
  } else if (longest !== undefined) {
    yield againstLimit({
      subject,
      at: seal.waitS?.at ?? seal.at,
      dimension: 'time',
      comparison: 'at least',
      provided: given,
      like: seal.waitS,
      related,
      missing: [],
      // Of several times by temperature the longest counts: the weather of the test day is not known yet.
      limit: {
        value: longest.value,
        text: longest.text,
        others: [],
        source: {
          basis: 'product data',
          citation: `product data of ${seal.product?.id ?? ''}`,
          provenance: 'project document',
          at: longest.at,
        },
      },
      sentence: (provided) => `"${seal.id}" is water-tested by "${hold.id}" after ${provided}`,
      correct: (required) => `Let ${required} pass between "${seal.id}" and "${hold.id}" ("wait").`,
    });
  }
}

/** A water test tells something only after the seals cured and while the interface can be seen. */
export default defineRule({
  id: 'sequence/water-test-window',
  title: 'Time of the water test',
  summary:
    'A water test comes after the seals around the unit have cured and before finish or cladding hides the interface.',
  level: 'warning',
  reads: ['work.hold', 'work.wait', 'work.place', 'work.layer', 'product.waits'],
  sources: [COLUMN, EXTERIOR],
  *review({ detail }) {
    for (const hold of detail.work) {
      if (hold.action !== 'hold' || hold.holds.value !== 'water test') continue;
      const around = [...new Set(testedOpenings(detail, hold).flatMap((o) => seals(detail, o)))];
      for (const seal of around) {
        const base = {
          subject: `${seal.id} before ${hold.id}`,
          sources: [COLUMN],
          required: `"${seal.id}" before "${hold.id}"`,
        };
        if (seal.step > hold.step) {
          yield {
            kind: 'fail',
            ...base,
            at: hold.at,
            provided: `"${hold.id}" first`,
            message: `The water test "${hold.id}" comes before "${seal.id}" has sealed the unit.`,
            correct: `Put "${hold.id}" after "${seal.id}" and its cure.`,
            related: [{ message: 'sealed only here', at: seal.at }],
          };
          continue;
        }
        yield { kind: 'pass', ...base, at: hold.at, message: `The water test "${hold.id}" comes after "${seal.id}".` };
        yield* cured(detail, hold, seal);
      }
      const hiding = [
        ...finishes(detail).map((work) => ({ work, what: 'interior finish', source: COLUMN })),
        ...claddingWorks(detail).map((work) => ({ work, what: 'cladding', source: EXTERIOR })),
      ];
      for (const { work, what, source } of hiding) {
        const base = {
          at: hold.at,
          subject: `${hold.id} before ${work.id}`,
          sources: [source],
          required: `"${hold.id}" before "${work.id}"`,
        };
        if (work.step < hold.step)
          yield {
            kind: 'fail',
            ...base,
            ...(source === EXTERIOR ? { level: 'note' as const } : {}),
            provided: `"${work.id}" first`,
            message: `The water test "${hold.id}" comes after the ${what} "${work.id}", which hides where a leak would show.`,
            correct: `Put "${hold.id}" before "${work.id}".`,
            related: [{ message: `${what} goes on here`, at: work.at }],
          };
        else
          yield {
            kind: 'pass',
            ...base,
            message: `The water test "${hold.id}" comes before the ${what} "${work.id}".`,
          };
      }
    }
  },
});
