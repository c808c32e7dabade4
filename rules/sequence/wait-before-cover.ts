import { againstLimit } from '../../src/engine/against-limit.js';
import type { LimitQuery } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { PieceRole, WallFace } from '../../src/geometry/types.js';
import { hiddenShare, liesInside, meets, type Lying } from '../../src/model/hiding.js';
import { declaredBetweenS, hangsOver } from '../../src/model/order.js';
import type { Subject } from '../../src/model/measures.js';
import { fieldOfWork } from '../../src/model/named-field.js';
import type { Apply, Detail, Measured, WaitPurpose, Work } from '../../src/model/types.js';

const SUBJECT: Partial<Record<PieceRole, Subject>> = {
  'sill flashing': 'sill pan',
  'jamb flashing': 'jamb flashing',
  'head flashing': 'head flashing',
  'opening corners': 'corner treatment',
  'joint treatment': 'joint treatment',
  field: 'field membrane',
  counterflashing: 'counterflashing',
  'penetration collar': 'penetration',
  'base flashing': 'base flashing',
};
type Purpose = Extract<WaitPurpose, 'recoat' | 'cover' | 'unit'>;
const DONE_BY: Record<Purpose, string> = {
  recoat: 'is coated again by',
  cover: 'is covered by',
  unit: 'takes the unit from',
};

/** Common practice, no source: more than half covered is a coat, less is a lap. */
const COAT_SHARE = 0.5;

interface Next {
  readonly purpose: Purpose;
  readonly by: Work;
}

/** A second coat covers most of the first. A mere lap of a product onto itself, as of jambs onto the pan, is one application. */
function isCoatOn(piece: Lying, by: Lying): boolean {
  const { face, inside } = hiddenShare(piece, by);
  return face > COAT_SHARE || inside > COAT_SHARE;
}

/** What a later work does to an earlier one; `undefined` when the two do not meet. */
function purposeOf(detail: Detail, face: WallFace, work: Apply, by: Work): Purpose | undefined {
  const own = face.piecesOf(work.id);
  const later = face.piecesOf(by.id);
  if (by.action === 'set') {
    const isMet =
      by.sets === 'unit' &&
      own.some(
        (p) =>
          p.opening !== undefined &&
          by.openings.includes(p.opening) &&
          (liesInside(p) || later.some((q) => meets(p, q))),
      );
    return isMet ? 'unit' : undefined;
  }
  if (by.action !== 'apply') return undefined;
  if (own.some((p) => later.some((q) => meets(p, q)))) {
    if (by.product === undefined || by.product !== work.product) return 'cover';
    return own.some((p) => later.some((q) => isCoatOn(p, q))) ? 'recoat' : undefined;
  }
  return hangsOver(detail, by, work) && own.some((p) => p.face.length > 0) ? 'cover' : undefined;
}

/** The first work of each kind that follows on a work. */
function nextOn(detail: Detail, face: WallFace, work: Apply): Next[] {
  const found: Next[] = [];
  for (const by of detail.work.slice(work.step + 1)) {
    const purpose = purposeOf(detail, face, work, by);
    if (purpose !== undefined && !found.some((n) => n.purpose === purpose)) found.push({ purpose, by });
  }
  return found;
}

/** Times the data sheet asks for: those for the purpose, or, for the first work that follows, those before any next work. */
function demanded(work: Apply, purpose: Purpose, isFirst: boolean): Measured[] {
  const waits = work.product?.waits ?? [];
  const own = waits.filter((w) => w.before.value === purpose);
  const chosen = own.length > 0 || !isFirst ? own : waits.filter((w) => w.before.value === 'next work');
  return chosen.map((w) => w.timeS).sort((a, b) => a.value - b.value);
}

/** Each coat has had its time when the next work covers it, coats it again or sets a unit on it. */
export default defineRule({
  id: 'sequence/wait-before-cover',
  title: 'Waiting time before cover',
  summary: 'Between a work and the next one on it lies at least the time that the product needs.',
  level: 'error',
  reads: ['work.wait', 'product.waits'],
  sources: [{ basis: 'product data', citation: 'waiting times of the data sheet', provenance: 'project document' }],
  *review({ detail, face, limit }) {
    for (const work of detail.work) {
      if (work.action !== 'apply') continue;
      const role = face.piecesOf(work.id)[0]?.role;
      const subjectOf = role === undefined ? undefined : SUBJECT[role];
      for (const [i, { purpose, by }] of nextOn(detail, face, work).entries()) {
        const times = demanded(work, purpose, i === 0);
        const shortest = times[0];
        const longest = times.at(-1);
        const query = (time: Measured | undefined): LimitQuery => ({
          property: 'wait',
          comparison: 'at least',
          product: work.product,
          ...(subjectOf === undefined ? {} : { subject: subjectOf }),
          offered:
            time === undefined
              ? []
              : [
                  {
                    value: time.value,
                    text: time.text,
                    source: {
                      basis: 'product data',
                      citation: `product data of ${work.product?.id ?? work.id}`,
                      provenance: 'project document',
                      at: time.at,
                    },
                  },
                ],
        });
        // Setting a unit is not covering: what a specification asks before cover is not asked there.
        const most = purpose === 'unit' && longest === undefined ? undefined : limit(query(longest));
        if (most === undefined) continue;
        const subject = `${work.id} before ${by.id}`;
        const related = [{ message: `"${by.id}" follows on it`, at: by.at }];
        const given = declaredBetweenS(detail, work, by);
        const missing = [fieldOfWork(work, 'wait')];
        if (given === undefined) {
          yield {
            kind: 'open',
            at: work.at,
            subject,
            required: `at least ${most.text}`,
            message: `"${work.id}" ${DONE_BY[purpose]} "${by.id}", and no wait is declared between them; ${most.source.citation} asks for at least ${most.text}: state "wait".`,
            missing,
            sources: [most.source],
            related,
          };
          continue;
        }
        const compare = (governing: typeof most): ReturnType<typeof againstLimit> =>
          againstLimit({
            subject,
            at: work.waitS?.at ?? work.at,
            dimension: 'time',
            provided: given,
            like: work.waitS,
            comparison: 'at least',
            limit: governing,
            related,
            missing,
            sentence: (provided) => `"${work.id}" ${DONE_BY[purpose]} "${by.id}" after ${provided}`,
            correct: (required) => `Let ${required} pass between "${work.id}" and "${by.id}" ("wait").`,
          });
        const strict = compare(most);
        const least = limit(query(shortest));
        const mild = least === undefined ? strict : compare(least);
        if (strict.kind === 'pass' || mild.kind === 'fail' || least === undefined) {
          yield strict.kind === 'pass' ? strict : mild;
          continue;
        }
        yield {
          kind: 'open',
          at: work.waitS?.at ?? work.at,
          subject,
          provided: strict.provided ?? '',
          required: `${least.text} to ${most.text}, by temperature`,
          message: `"${work.id}" ${DONE_BY[purpose]} "${by.id}" after ${strict.provided ?? ''}; ${most.source.citation} asks for ${least.text} to ${most.text}, depending on the temperature: declare the wait for the coldest day planned.`,
          missing,
          sources: [most.source, least.source],
          related,
        };
      }
    }
  },
});
