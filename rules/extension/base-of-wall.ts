import { housesAsGuide, BRICK_FLASHING } from '../../src/engine/clauses.js';
import { againstLimit, statedSize } from '../../src/engine/against-limit.js';
import type { Limit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { fieldPieces } from '../../src/geometry/around-opening.js';
import { edgeOverlap } from '../../src/geometry/overlap.js';
import type { Apply, Detail } from '../../src/model/types.js';
import { HABIT, habit, hasMasonry } from '../../src/water/laps.js';

const IRC: Source = {
  basis: 'code',
  citation: 'IRC R404.1.6',
  provenance: 'seen at second hand',
  codes: ['IRC'],
};
const UPSTAND = { value: 203.2, text: '8 in', source: BRICK_FLASHING } as const;
const LAP = { value: 101.6, text: '4 in', source: BRICK_FLASHING } as const;
const ABOVE_GRADE = { value: 152.4, text: '6 in', source: BRICK_FLASHING } as const;
/** Foundation left in sight above grade. */
const EXPOSED = {
  veneer: { value: 101.6, text: '4 in (masonry veneer)' },
  other: { value: 152.4, text: '6 in' },
} as const;

function exposedLimit(detail: Detail): Limit {
  return {
    ...(hasMasonry(detail.layers) ? EXPOSED.veneer : EXPOSED.other),
    source: detail.project?.code?.title === 'IRC' ? IRC : housesAsGuide(IRC),
    others: [],
  };
}

/** The barrier laps onto the foundation and stops at a dry height. */
export default defineRule({
  id: 'extension/base-of-wall',
  title: 'Base of the wall',
  summary:
    'At the base the flashing rises high enough, and the barrier laps onto the foundation and ends high above grade.',
  level: 'error',
  reads: [
    'edges.bottom',
    'wall.material',
    'work.place',
    'work.upstand',
    'work.ontoFoundation',
    'work.aboveGrade',
    'work.exposedFoundation',
    'project.code',
  ],
  sources: [BRICK_FLASHING, IRC, HABIT],
  parameters: {
    ontoFoundation: {
      type: 'length',
      default: '4 in',
      meaning: 'lap onto the foundation or its waterproofing where no document of the project states one',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    const base = detail.work.filter(
      (w): w is Apply => w.action === 'apply' && w.places.some((p) => p.value === 'base of wall'),
    );
    // Through-wall flashing rises behind masonry, wherever the drawn piece of wall ends.
    for (const work of hasMasonry(detail.layers)
      ? base.filter(
          (w) => w.upstandMm !== undefined || w.family === 'metal flashing' || w.family === 'flexible flashing',
        )
      : []) {
      yield statedSize({
        work,
        field: 'upstand',
        size: work.upstandMm,
        what: 'how far it turns up the backing',
        limit: limit({
          property: 'upstand',
          subject: 'through-wall flashing',
          product: work.product,
          comparison: 'at least',
          offered: [UPSTAND],
        }),
        sentence: (p) => `"${work.id}" turns up ${p} on the backing`,
        correct: (r) => `Turn "${work.id}" up ${r} ("upstand").`,
      });
      const piece = face.piecesOf(work.id).find((p) => p.role === 'base flashing' && p.face.length > 0);
      const over = piece === undefined ? [] : fieldPieces(face).filter((p) => face.lapBetween(p, piece)?.over === p);
      const first = over[0];
      // A barrier behind the flashing is a reverse lap, which has its own rule.
      const lap =
        piece === undefined || first === undefined
          ? undefined
          : edgeOverlap(
              piece.face,
              'top',
              over.flatMap((p) => p.face),
              face.bounds,
            );
      if (lap === undefined || first === undefined) continue;
      yield againstLimit({
        subject: `lap over ${work.id}`,
        at: first.at,
        dimension: 'length',
        comparison: 'at least',
        like: work.upstandMm,
        provided: lap.leastMm,
        related: [{ message: 'the base flashing', at: work.at }],
        limit: limit({
          property: 'lap',
          subject: 'through-wall flashing',
          product: first.product,
          comparison: 'at least',
          offered: [LAP],
        }),
        sentence: (p) => `"${first.id}" laps ${p} over the upstand of "${work.id}"`,
        correct: (required) => `Lap "${first.id}" over "${work.id}" by ${required}.`,
        missing: [],
      });
    }
    const edge = detail.edges.find(
      (e) => e.side === 'bottom' && (e.meets.value === 'foundation' || e.meets.value === 'grade'),
    );
    if (edge === undefined || detail.work.length === 0) return;
    const first = base[0];
    if (first === undefined) {
      // Another detail may show the tie-in; whether it exists is asked by the air rules.
      if (edge.tieIn !== undefined) return;
      yield {
        kind: 'fail',
        subject: 'base of wall',
        at: edge.at,
        sources: [HABIT],
        required: 'membrane or flashing at the base',
        provided: 'none',
        message: `The wall meets the ${edge.meets.value}, but no work carries the barrier onto it.`,
        correct: 'Add work with "place: base of wall", or name the detail that shows it ("tieIn").',
      };
      return;
    }
    const flashing = base.find((w) => w.aboveGradeMm !== undefined || w.upstandMm !== undefined) ?? first;
    const onto = base.find((w) => w.ontoFoundationMm !== undefined) ?? first;
    const shown = base.find((w) => w.exposedFoundationMm !== undefined) ?? flashing;
    yield statedSize({
      work: onto,
      field: 'ontoFoundation',
      size: onto.ontoFoundationMm,
      what: 'how far it laps onto the foundation',
      limit: limit({
        property: 'lap onto foundation',
        subject: 'base flashing',
        product: onto.product,
        comparison: 'at least',
        offered: habit(number('ontoFoundation')),
      }),
      sentence: (p) => `"${onto.id}" laps ${p} onto the foundation`,
      correct: (r) => `Carry "${onto.id}" ${r} onto the foundation or its waterproofing ("ontoFoundation").`,
    });
    yield statedSize({
      work: flashing,
      field: 'aboveGrade',
      size: flashing.aboveGradeMm,
      what: 'how high above grade it stands',
      limit: limit({
        property: 'base flashing above grade',
        subject: 'base flashing',
        product: flashing.product,
        comparison: 'at least',
        offered: [ABOVE_GRADE],
      }),
      sentence: (p) => `"${flashing.id}" stands ${p} above grade`,
      correct: (r) => `Raise "${flashing.id}" to ${r} above grade ("aboveGrade").`,
    });
    // The height is asked for by a code of the United States.
    if (detail.project?.code?.title === 'NBC') return;
    yield statedSize({
      work: shown,
      field: 'exposedFoundation',
      size: shown.exposedFoundationMm,
      what: 'how much of the foundation stays in sight above grade',
      limit: exposedLimit(detail),
      sentence: (p) => `${p} of foundation stays in sight above grade below "${shown.id}"`,
      correct: (r) => `Keep ${r} of foundation in sight above grade ("exposedFoundation").`,
    });
  },
});
