import { BRICK_FLASHING } from '../../src/engine/clauses.js';
import { againstLimit } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import type { Apply, Detail } from '../../src/model/types.js';
import { listed } from '../../src/continuity/words.js';
import { fieldOfWork } from '../../src/model/named-field.js';
import { anchoredVeneer } from '../../src/model/veneer.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { waterHeadMm } from '../../src/water/head.js';
import { hasMasonry } from '../../src/water/laps.js';
import { outerCavity, RAIN_SHARE, shareOfDesign } from '../../src/water/rain-pressure.js';

const HEAD: Source = {
  basis: 'physics',
  citation: 'head of water at the design wind pressure, P / (rho g)',
  provenance: 'computed',
  url: 'https://obc.hyperlinked.ca/volume-2/appendix-a/explanatory-b/b-9.27.3.8.(5)-appx',
};
/** The share comes from the water test of units; holding end dams behind a cavity against it is a habit. */
const CAVITY: Source = {
  basis: 'practice',
  citation: 'end dams behind a drained or vented cavity held against the share of the pressure that drives rain',
  provenance: 'common practice, no source',
};
const SHARED_HEAD: Source = {
  ...CAVITY,
  citation: 'head of water at the share of the design wind pressure that drives rain, P / (rho g)',
};
/** Turned into a head joint of masonry. */
const MASONRY: OfferedLimit = { value: 25.4, text: '1 in', source: BRICK_FLASHING };

/** Horizontal flashing that ends within the wall; through-wall flashing at the base only where the wall ends too. */
function endsWithin(detail: Detail, apply: Apply): boolean {
  return apply.places.some(({ value: place }) => {
    if (place === 'head') return apply.family === 'metal flashing';
    if (place === 'shelf angle' || place === 'lintel')
      return apply.family !== 'sealant' && apply.family !== 'backer rod';
    const ends = detail.edges.some((e) => (e.side === 'left' || e.side === 'right') && e.meets.value !== 'same wall');
    return place === 'base of wall' && (apply.endDamsMm !== undefined || (ends && apply.upstandMm !== undefined));
  });
}

/** Flashing over an opening with its shape drawn; what is only named may leave its ends to another drawing. */
function overOpening(apply: Apply): boolean {
  const isOver = apply.places.some((p) => p.value === 'head' || p.value === 'lintel');
  const shape = [apply.upstandMm, apply.projectsMm, apply.pastJambsMm, apply.slope, apply.weeps];
  return isOver && apply.openings.length > 0 && shape.some((size) => size !== undefined);
}

/** Ends of horizontal flashing turn up, higher than wind pushes the water. */
export default defineRule({
  id: 'lap/end-dam',
  title: 'End dams of horizontal flashing',
  summary: 'Horizontal flashing that stops within the wall has turned-up ends, higher than the wind raises water.',
  level: 'warning',
  reads: [
    'work.place',
    'work.endDams',
    'work.layer',
    'project.wind.designPressure',
    'wall.material',
    'wall.drained',
    'wall.vented',
    'project.code',
  ],
  sources: [HEAD, BRICK_FLASHING, RAIN_SHARE.source, CAVITY],
  parameters: {
    share: {
      type: 'fraction',
      default: RAIN_SHARE.text,
      meaning: 'share of the design wind pressure that raises water on flashing behind a drained or vented cavity',
      source: RAIN_SHARE.source,
    },
  },
  *review({ detail, limit, number }) {
    const cavity = outerCavity(detail);
    // The Canadian note sets the height of end dams against the pressure itself (from memory, confirm).
    const takesWhole = detail.project?.code?.title === 'NBC' || cavity.state === 'closed';
    // As for weeps: a detail that lays the veneer shows what lies under it.
    const isLaidOver = anchoredVeneer(detail)?.laidBy !== undefined;
    for (const work of detail.work) {
      if (work.action !== 'apply' || !endsWithin(detail, work)) continue;
      const subject = `ends of ${work.id}`;
      if (work.endDamsMm === undefined) {
        if (isLaidOver && overOpening(work))
          yield {
            kind: 'fail',
            subject,
            at: work.at,
            message: `"${work.id}" over ${listed(work.openings.map((o) => `"${o.id}"`))} is drawn without end dams, and the veneer is laid over it: water spills off its ends into the cavity beside the opening.`,
            required: 'ends that turn up',
            provided: 'no end dams',
            correct: `Turn the ends of "${work.id}" up ("endDams").`,
            sources: [BRICK_FLASHING],
          };
        else
          yield {
            kind: 'open',
            subject,
            at: work.at,
            missing: [fieldOfWork(work, 'endDams')],
            message: `"${work.id}" stops within the wall and does not say how high its ends turn up; add "endDams".`,
          };
        continue;
      }
      const pressure = detail.project?.designPressurePa;
      const provided = work.endDamsMm;
      const atHead = work.places.some((p) => p.value === 'head');
      const outcome = (share: number): Outcome => {
        const offered: OfferedLimit[] = hasMasonry(detail.layers) ? [MASONRY] : [];
        if (pressure !== undefined) {
          const headMm = waterHeadMm(pressure.value * share);
          const height = formatQuantity(headMm, 'length', { ...provided, toward: 'up' });
          offered.push({
            value: headMm,
            text:
              share === 1
                ? `${height} (head of water at ${pressure.text})`
                : `${height} (head of water at ${shareOfDesign(share, pressure.text)}, as "${cavity.layer?.id ?? ''}" is ${cavity.layer?.drained?.value === true ? 'drained' : 'vented'})`,
            source: { ...(share === 1 ? HEAD : SHARED_HEAD), at: pressure.at },
          });
        }
        return againstLimit({
          subject,
          at: provided.at,
          dimension: 'length',
          comparison: 'at least',
          like: provided,
          provided: provided.value,
          limit: limit({
            property: 'end dam height',
            subject: atHead ? 'head flashing' : 'through-wall flashing',
            product: work.product,
            comparison: 'at least',
            offered,
          }),
          sentence: (p) => `The ends of "${work.id}" turn up ${p}`,
          correct: (required) => `Turn the ends up ${required} ("endDams").`,
          missing: ['project.wind.designPressure', 'a specification requirement for "end dam height"'],
        });
      };
      const whole = outcome(1);
      if (takesWhole) yield whole;
      else if (cavity.state === 'open') yield outcome(number('share'));
      else if (whole.kind !== 'fail' || outcome(number('share')).kind === 'fail') yield whole;
      else
        yield {
          kind: 'open',
          subject,
          at: provided.at,
          missing: cavity.missing,
          message: `The ends of "${work.id}" turn up ${formatQuantity(provided.value, 'length', provided)}: enough behind a drained or vented cavity, too little behind a closed one. Which of them "${cavity.layer?.id ?? ''}" is, is not told; declare ${cavity.missing.join(' or ')}.`,
        };
    }
  },
});
