import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';

const FIELD_TEST: Source = {
  basis: 'guide',
  citation: 'FGIA column on field testing of installed windows (AAMA 502, 503)',
  provenance: 'seen',
  url: 'https://windowanddoor.com/article/field-testing',
};

/** A field water test is planned for each kind of opening. */
export default defineRule({
  id: 'submittal/water-test-planned',
  title: 'Plan of the water test',
  summary: 'A field water test is planned for every opening with a unit in it.',
  level: 'note',
  reads: ['work.hold', 'openings.unit'],
  sources: [FIELD_TEST],
  *review({ detail }) {
    const holds = detail.work.filter((w) => w.action === 'hold' && w.holds.value === 'water test');
    for (const opening of detail.openings) {
      const set = detail.work.find((w) => w.action === 'set' && w.sets === 'unit' && w.openings.includes(opening));
      // Louvers let air and some rain through by design and are not tested as windows are.
      if (set === undefined || opening.type === 'louver') continue;
      const hold = holds.find((h) => h.step > set.step);
      const subject = `water test of ${opening.id}`;
      if (hold !== undefined)
        yield {
          kind: 'pass',
          message: `"${opening.id}" is water-tested at "${hold.id}".`,
          at: hold.at,
          subject,
          sources: [FIELD_TEST],
        };
      else if (!detail.work.some((w) => w.action === 'hold')) {
        yield {
          kind: 'open',
          message: `The work declares no hold points, so it is not known whether "${opening.id}" is water-tested.`,
          at: set.at,
          subject,
          missing: ['work.hold'],
          sources: [FIELD_TEST],
        };
      } else {
        yield {
          kind: 'fail',
          message: `No water test is planned for "${opening.id}" after its unit is set.`,
          at: set.at,
          subject,
          required: 'a hold point for a water test',
          provided: 'none',
          sources: [FIELD_TEST],
          correct:
            'Plan a water test after the perimeter seals have cured and before the interior finish. Add "{ hold: water test, by: ..., accept: ..., method: AAMA 502 }" there.',
        };
      }
    }
  },
});
