import { againstLimit, statedSize } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { worksNamed } from '../../src/model/order.js';
import { cavityFeet, type CavityFoot } from '../../src/model/veneer.js';
import type { Apply, Detail } from '../../src/model/types.js';

const BIA_DRIP: Source = {
  basis: 'guide',
  citation: 'BIA Technical Note 21B',
  provenance: 'seen',
};
const CROSSED: Source = {
  basis: 'physics',
  citation: 'a strip that comes after the flashing crosses it and leads water behind it',
  provenance: 'computed',
};
const HABIT: Source = {
  basis: 'practice',
  citation: 'flashing over an opening runs past the lintel on both sides',
  provenance: 'common practice, no source',
};
const DRIP: OfferedLimit = { value: 6.35, text: '1/4 in', source: BIA_DRIP };

/** A strip from the wall onto the foundation that comes after the flashing would have to pass through it. */
function* crossed(detail: Detail, flashing: Apply): Iterable<Outcome> {
  for (const strip of detail.work) {
    if (
      strip.action !== 'apply' ||
      strip === flashing ||
      strip.ontoFoundationMm === undefined ||
      !strip.places.some((p) => p.value === 'base of wall')
    )
      continue;
    const slipped = flashing.tuckedUnder.some((t) => worksNamed(detail, t.value).includes(strip));
    const before = strip.step < flashing.step && !slipped;
    const base = { subject: `${strip.id} behind ${flashing.id}`, at: strip.at, sources: [CROSSED] };
    yield before
      ? { kind: 'pass', ...base, message: `"${strip.id}" is on the foundation before "${flashing.id}" crosses it.` }
      : {
          kind: 'fail',
          ...base,
          message: `"${strip.id}" runs onto the foundation over "${flashing.id}", which is led out to the face: it would have to pass through the flashing.`,
          required: `"${strip.id}" before "${flashing.id}"`,
          provided: slipped
            ? `"${flashing.id}" is tucked under "${strip.id}"`
            : `"${strip.id}" is step ${strip.step + 1}, "${flashing.id}" is step ${flashing.step + 1}`,
          correct: `Put "${strip.id}" before "${flashing.id}", behind it.`,
          related: [{ message: 'the through-wall flashing', at: flashing.at }],
        };
  }
}

/** Over an opening the flashing runs past the jambs at least as far as the lintel, so that its dams stand clear of it. */
function pastJambs(foot: CavityFoot, flashing: Apply): Outcome | undefined {
  const { opening } = foot;
  if (opening === undefined || !flashing.places.some((p) => p.value === 'lintel')) return undefined;
  const bearing = opening.lintel?.bearingMm;
  const size = flashing.pastJambsMm;
  const subject = `pastJambs of ${flashing.id} over ${opening.id}`;
  if (size === undefined)
    return {
      kind: 'open',
      subject,
      at: flashing.at,
      missing: ['work.pastJambs'],
      message: `"${flashing.id}" does not say how far it runs past the jambs of "${opening.id}"; add "pastJambs".`,
    };
  return againstLimit({
    subject,
    at: size.at,
    dimension: 'length',
    comparison: 'at least',
    like: size,
    provided: size.value,
    limit:
      bearing === undefined
        ? undefined
        : { value: bearing.value, text: `${bearing.text} (bearing of the lintel)`, source: HABIT, others: [] },
    sentence: (p) => `"${flashing.id}" runs ${p} past the jambs of "${opening.id}"`,
    correct: (required) => `Carry "${flashing.id}" ${required} past the jambs ("pastJambs").`,
    missing: ['openings.lintel.bearing'],
  });
}

/** Through-wall flashing reaches past the face at the base, and past the lintel over an opening. */
export default defineRule({
  id: 'veneer/through-wall-flashing',
  title: 'Through-wall flashing of a masonry veneer',
  summary:
    'At the base the flashing drips clear of the veneer and no strip crosses it; over an opening it runs past the lintel.',
  level: 'error',
  reads: ['work.place', 'work.projects', 'work.pastJambs', 'work.ontoFoundation', 'openings.lintel.bearing'],
  sources: [BIA_DRIP, CROSSED, HABIT],
  *review({ detail, limit }) {
    for (const foot of cavityFeet(detail)) {
      const { flashing } = foot;
      if (flashing === undefined) continue;
      if (foot.kind === 'opening') {
        const outcome = pastJambs(foot, flashing);
        if (outcome !== undefined) yield outcome;
      }
      // On an angle or a lintel the drip is looked at by extension/shelf-angle.
      if (foot.kind !== 'base') continue;
      // A flashing that does not say that it reaches the face is told by veneer/way-out.
      if (flashing.projectsMm !== undefined)
        yield statedSize({
          work: flashing,
          field: 'projects',
          size: flashing.projectsMm,
          what: 'how far its drip stands clear of the face',
          limit: limit({
            property: 'drip projection',
            subject: 'through-wall flashing',
            product: flashing.product,
            comparison: 'at least',
            offered: [DRIP],
          }),
          sentence: (p) => `The drip of "${flashing.id}" stands ${p} clear of the face`,
          correct: (r) => `Let the drip stand clear by ${r} ("projects").`,
        });
      yield* crossed(detail, flashing);
    }
  },
});
