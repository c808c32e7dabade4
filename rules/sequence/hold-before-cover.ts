import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import type { WallFace } from '../../src/geometry/types.js';
import { hiddenShare, liesInside } from '../../src/model/hiding.js';
import { flashingAt, hangsOver, worksNamed } from '../../src/model/order.js';
import type { Apply, Detail, Hold, HoldFor, Work } from '../../src/model/types.js';

const PROGRAM: Source = {
  basis: 'guide',
  citation: 'air barrier association quality program, daily checks by the installer',
  provenance: 'seen',
  url: 'http://coatingspromag.epubxp.com/i/796818-mar-2017/27',
};
const FIELD_CONTROL: Source = {
  basis: 'guide',
  citation: 'UFGS 07 92 00, 3.1, field quality control',
  provenance: 'seen',
};
const HABIT: Source = {
  basis: 'practice',
  citation: 'at least one hold point before the work at an opening is covered',
  provenance: 'common practice, no source',
};
const SHARE: Source = {
  basis: 'practice',
  citation: 'work counts as hidden when half of it is',
  provenance: 'common practice, no source',
};

/** These look ahead: they release work that is still to be done. */
const AHEAD: ReadonlySet<HoldFor> = new Set<HoldFor>(['substrate acceptance', 'mock-up acceptance']);
/** These try the finished wall; `water-test-window` says when. */
const WHOLE_WALL: ReadonlySet<HoldFor> = new Set<HoldFor>(['water test', 'air leakage check', 'mock-up acceptance']);

/** True when a later work hides more than the given share of a work, on the face or inside the opening. */
function hides(detail: Detail, face: WallFace, by: Work, work: Apply, share: number): boolean {
  const own = face.piecesOf(work.id);
  if (by.action === 'set')
    return (
      by.sets === 'unit' && own.some((p) => p.opening !== undefined && by.openings.includes(p.opening) && liesInside(p))
    );
  if (by.action !== 'apply') return false;
  if (hangsOver(detail, by, work)) return own.some((p) => p.face.length > 0);
  const isInterior = by.places.some((p) => p.value === 'interior face');
  if (isInterior && work.places.some((p) => p.value === 'interior perimeter')) return true;
  const over = face.piecesOf(by.id);
  return own.some((p) => {
    const shares = over.map((q) => hiddenShare(p, q));
    return shares.reduce((sum, s) => sum + s.face, 0) > share || shares.reduce((sum, s) => sum + s.inside, 0) > share;
  });
}

/** What a hold is about: the works it names; a pan water check that names none is about the pans done so far. */
function heldWorks(detail: Detail, hold: Hold): Work[] {
  if (hold.of.length > 0) return hold.of.flatMap((name) => worksNamed(detail, name.value));
  if (hold.holds.value !== 'pan water check') return [];
  return [
    ...new Set(
      detail.openings
        .flatMap((o) => flashingAt(detail, o, ['sill']))
        .map((s) => s.work)
        .filter((w) => w.step < hold.step),
    ),
  ];
}

/** Who looks and what is accepted. */
function record(hold: Hold): Outcome {
  const lacking = [
    ...(hold.by === undefined ? ['who looks ("by")'] : []),
    ...(hold.accept === undefined ? ['what is accepted ("accept")'] : []),
  ];
  const base = {
    at: hold.at,
    subject: `record of ${hold.id}`,
    sources: [PROGRAM, FIELD_CONTROL],
    required: 'who looks and what is accepted',
  };
  if (lacking.length === 0)
    return {
      kind: 'pass',
      ...base,
      provided: `by ${hold.by?.value ?? ''}: ${hold.accept?.value ?? ''}`,
      message: `Hold point "${hold.id}" (${hold.holds.value}) says who looks and what is accepted.`,
    };
  return {
    kind: 'fail',
    ...base,
    provided: `without ${lacking.join(' and ')}`,
    message: `Hold point "${hold.id}" (${hold.holds.value}) does not say ${lacking.join(' and ')}.`,
    correct: `Add ${lacking.join(' and ')}.`,
  };
}

/** Work is looked at before it disappears. */
export default defineRule({
  id: 'sequence/hold-before-cover',
  title: 'Order of holds and cover',
  summary: 'Work that is to be checked is checked before later work hides it, by someone named, against a value.',
  level: 'warning',
  reads: ['work.hold', 'work.of', 'work.by', 'work.accept'],
  sources: [PROGRAM, FIELD_CONTROL, HABIT],
  parameters: {
    hiddenShare: {
      type: 'fraction',
      default: '50 %',
      meaning: 'share of a piece, on the face or inside the opening, above which it counts as hidden',
      source: SHARE,
    },
  },
  *review({ detail, face, number }) {
    const holds = detail.work.filter((w): w is Hold => w.action === 'hold');
    const first = detail.work.find((w) => w.action !== 'hold' && w.openings.length > 0);
    if (holds.length === 0 && first !== undefined) {
      yield {
        kind: 'open',
        subject: 'hold points',
        sources: [HABIT],
        at: { document: detail.at.document, path: ['work'], part: 'key' },
        missing: ['work.hold'],
        message:
          'The work declares no hold point, so it is not known what is checked before it is covered; add a hold, for example "{ hold: visual check, by: installer, accept: no gaps at laps and corners }".',
      };
    }
    for (const hold of holds) {
      yield record(hold);
      const kind = hold.holds.value;
      for (const work of heldWorks(detail, hold)) {
        const base = {
          at: hold.at,
          subject: `${hold.id} of ${work.id}`,
          sources: [PROGRAM],
          required: `${kind} after "${work.id}" and before it is hidden`,
        };
        if (work.step > hold.step) {
          if (AHEAD.has(kind))
            yield {
              kind: 'pass',
              ...base,
              required: `${kind} before "${work.id}"`,
              message: `Hold point "${hold.id}" (${kind}) releases "${work.id}" before it begins.`,
            };
          else
            yield {
              kind: 'fail',
              ...base,
              provided: `"${work.id}" comes later`,
              message: `Hold point "${hold.id}" (${kind}) checks "${work.id}" before it is done.`,
              correct: `Put "${hold.id}" after "${work.id}".`,
              related: [{ message: 'done only here', at: work.at }],
            };
          continue;
        }
        if (work.action !== 'apply' || WHOLE_WALL.has(kind)) continue;
        const by = detail.work
          .slice(work.step + 1, hold.step)
          .find((w) => hides(detail, face, w, work, number('hiddenShare')));
        if (by === undefined) {
          yield {
            kind: 'pass',
            ...base,
            message: `Hold point "${hold.id}" (${kind}) comes before anything hides "${work.id}".`,
          };
        } else {
          yield {
            kind: 'fail',
            ...base,
            provided: `"${by.id}" hides it first`,
            message: `Hold point "${hold.id}" (${kind}) comes after "${by.id}" has hidden "${work.id}".`,
            correct: `Put "${hold.id}" between "${work.id}" and "${by.id}".`,
            related: [{ message: `"${by.id}" hides "${work.id}"`, at: by.at }],
          };
        }
      }
    }
  },
});
