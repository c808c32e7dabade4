import { BRICK_FLASHING } from '../../src/engine/clauses.js';
import { againstLimit } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { cavityFeet } from '../../src/model/veneer.js';
import type { Apply } from '../../src/model/types.js';

const IRC: Source = {
  basis: 'code',
  citation: 'IRC R703.8.6, weepholes of masonry veneer',
  provenance: 'seen at second hand',
  url: 'https://www.jlconline.com/how-to/exteriors/weep-holes-in-brick-and-stone-veneer_o',
};
const NBC: Source = {
  basis: 'code',
  citation: 'NBC, required weep holes',
  provenance: 'seen',
  url: 'https://www.oncodes.ca/exterior-finishes/required-weep-holes/',
};
const SPACING: OfferedLimit = { value: 838.2, text: '33 in', source: IRC };
const SPACING_NBC: OfferedLimit = { value: 800, text: '800 mm', source: NBC };
const BY_KIND: Readonly<Record<NonNullable<NonNullable<Apply['weeps']>['type']>['value'], OfferedLimit>> = {
  'open head joints': { value: 609.6, text: '24 in (open head joints)', source: BRICK_FLASHING },
  tubes: { value: 406.4, text: '16 in (tubes)', source: BRICK_FLASHING },
  wicks: { value: 406.4, text: '16 in (wicks)', source: BRICK_FLASHING },
};
const SIZE: OfferedLimit = { value: 4.7625, text: '3/16 in', source: IRC };

/** A code that another project builds by is a guide here. */
const asGuide = (offered: OfferedLimit): OfferedLimit => ({
  ...offered,
  source: { ...offered.source, basis: 'guide' },
});

/** Weeps above through-wall flashing are close enough together and large enough to drain. */
export default defineRule({
  id: 'veneer/weeps',
  title: 'Weeps of a masonry veneer',
  summary: 'Weeps above the flashing of a masonry veneer are close enough together, and large enough to drain.',
  level: 'error',
  reads: ['work.weeps', 'project.code', 'wall.material'],
  sources: [IRC, BRICK_FLASHING, NBC],
  *review({ detail, limit }) {
    const code = detail.project?.code?.title;
    const told = new Set<unknown>();
    for (const foot of cavityFeet(detail)) {
      // Without weeps there is no way out, which veneer/way-out tells; those of the veneer serve every foot of it.
      if (foot.flashing === undefined || foot.weeps === undefined || foot.weeps.of.count?.value === 0) continue;
      const { by, of: weeps } = foot.weeps;
      if (told.has(weeps)) continue;
      told.add(weeps);
      const about = `The weeps of "${by.id}"`;
      const base = { subject: 'through-wall flashing', product: by.product } as const;
      const kind = weeps.type?.value;
      if (weeps.spacingMm === undefined) {
        yield {
          kind: 'open',
          subject: `weep spacing of ${by.id}`,
          at: weeps.at,
          missing: ['work.weeps.spacing'],
          message: `${about} do not say how far apart they are; declare "spacing".`,
        };
      } else {
        yield againstLimit({
          subject: `weep spacing of ${by.id}`,
          at: weeps.spacingMm.at,
          dimension: 'length',
          comparison: 'at most',
          like: weeps.spacingMm,
          provided: weeps.spacingMm.upper ?? weeps.spacingMm.value,
          limit: limit({
            ...base,
            property: 'weep spacing',
            comparison: 'at most',
            offered: [
              ...(code === 'NBC' ? [SPACING_NBC] : []),
              code === 'IRC' ? SPACING : asGuide(SPACING),
              ...(kind === undefined ? [] : [BY_KIND[kind]]),
            ],
          }),
          sentence: (p) => `${about} are ${p} apart`,
          correct: (required) => `Set them ${required} apart ("weeps: { spacing }").`,
          missing: [],
        });
      }
      if (weeps.sizeMm === undefined) {
        yield {
          kind: 'open',
          subject: `weep size of ${by.id}`,
          at: weeps.at,
          missing: ['work.weeps.size'],
          message: `${about} do not say how wide they are; declare "size".`,
        };
      } else {
        const { source, ...size } = code === 'IRC' ? SIZE : asGuide(SIZE);
        yield againstLimit({
          subject: `weep size of ${by.id}`,
          at: weeps.sizeMm.at,
          dimension: 'length',
          comparison: 'at least',
          like: weeps.sizeMm,
          provided: weeps.sizeMm.value,
          limit: { ...size, source, others: [] },
          sentence: (p) => `${about} are ${p} wide`,
          correct: (required) => `Make them ${required} wide ("weeps: { size }").`,
          missing: [],
        });
      }
    }
  },
});
