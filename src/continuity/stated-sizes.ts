/** Sizes declared beside each other: where they can be computed from one another, whether they agree. */
import type { Apply, Detail, Measured, Opening, SetIn } from '../model/types.js';
import { formatQuantity } from '../quantity/format.js';
import type { Locus } from '../reading/types.js';
import { panOf } from '../water/at-opening.js';

export interface StatedSize {
  readonly agrees: boolean;
  readonly subject: string;
  readonly at: Locus;
  readonly message: string;
  readonly required: string;
  readonly provided: string;
  readonly correct: string;
  readonly related?: { readonly message: string; readonly at: Locus };
}

/** Rounding of fractions of inches, mm. */
const TOLERANCE_MM = 0.1;

/** A size that cannot be more than another. */
function within(
  subject: string,
  size: Measured,
  limit: Measured,
  say: { readonly it: string; readonly than: string; readonly correct: string },
): StatedSize {
  const agrees = size.value <= limit.value + TOLERANCE_MM;
  return {
    agrees,
    subject,
    at: size.at,
    message: agrees
      ? `${say.it}, ${size.text}, fits ${say.than}, ${limit.text}.`
      : `${say.it} is declared as ${size.text}, more than ${say.than}, ${limit.text}.`,
    required: `at most ${limit.text}`,
    provided: size.text,
    correct: say.correct,
    related: { message: say.than, at: limit.at },
  };
}

function* ofSheet(work: Apply): Iterable<StatedSize> {
  const roll = work.rollMm ?? work.product?.rollWidthMm;
  const lap = work.courseLapMm;
  if (roll !== undefined && lap !== undefined) {
    const agrees = lap.value < roll.value - TOLERANCE_MM;
    yield {
      agrees,
      subject: `courses of ${work.id}`,
      at: lap.at,
      message: agrees
        ? `The courses of "${work.id}" lap ${lap.text} of a roll of ${roll.text}.`
        : `The courses of "${work.id}" are declared to lap ${lap.text}, which leaves nothing of a roll of ${roll.text}: no course would rise above the one below.`,
      required: `less than ${roll.text}`,
      provided: lap.text,
      correct: 'Correct "courseLap" or "roll".',
      related: { message: 'width of the roll', at: roll.at },
    };
  }
  if (work.rollMm !== undefined && work.product?.rollWidthMm !== undefined)
    yield within(`roll of ${work.id}`, work.rollMm, work.product.rollWidthMm, {
      it: `The roll of "${work.id}"`,
      than: 'the roll the product is made in',
      correct: 'Lay out the courses with the roll the product comes in ("roll").',
    });
}

function* atOpening(work: Apply, opening: Opening): Iterable<StatedSize> {
  const into = work.intoOpeningMm;
  if (into !== undefined && into !== 'full' && opening.depthMm !== undefined)
    yield within(`${work.id} in ${opening.id}`, into, opening.depthMm, {
      it: `The reach of "${work.id}" into "${opening.id}"`,
      than: 'the depth of the rough opening',
      correct: 'Correct "intoOpening", or the depth of the rough opening.',
    });
  if (work.downJambsMm !== undefined)
    yield within(`${work.id} down the jambs of ${opening.id}`, work.downJambsMm, opening.heightMm, {
      it: `The reach of "${work.id}" down the jambs of "${opening.id}"`,
      than: 'the height of the rough opening',
      correct: 'Correct "downJambs".',
    });
  if (work.endDamsMm === undefined || !work.places.some((p) => p.value === 'sill')) return;
  yield within(`end dams of ${work.id} in ${opening.id}`, work.endDamsMm, opening.heightMm, {
    it: `The upturn of "${work.id}" at the jambs of "${opening.id}"`,
    than: 'the height of the rough opening',
    correct: 'Correct "endDams".',
  });
  const onFaceOnly = into !== undefined && into !== 'full' && into.value === 0 && !((work.pastJambsMm?.value ?? 0) > 0);
  if (onFaceOnly && work.endDamsMm.value > 0)
    yield {
      agrees: false,
      subject: `ends of ${work.id} in ${opening.id}`,
      at: work.endDamsMm.at,
      message: `The ends of "${work.id}" are declared to turn up ${work.endDamsMm.text} at "${opening.id}", but it reaches neither into the opening nor past the jambs: it has nothing to turn up.`,
      required: 'a pan that reaches into the opening or past the jambs',
      provided: 'a strip below the sill',
      correct:
        'Let the pan reach into the opening ("intoOpening") or past the jambs ("pastJambs"), or leave out "endDams".',
      related: { message: 'its reach into the opening', at: into.at },
    };
}

/** A seal at the back dam, while the dam stands below the frame where no seal can be made from inside. */
function* sealAtDam(detail: Detail, work: Apply, opening: Opening): Iterable<StatedSize> {
  const position = work.sealPosition;
  const frame = opening.unit?.frameDepthMm;
  const pan = panOf(detail, opening);
  const into = pan?.intoOpeningMm;
  if (position?.value !== 'at back dam' || frame === undefined || opening.unit?.mounting?.value !== 'flange') return;
  if (pan === undefined || into === undefined || into === 'full') return;
  const agrees = into.value >= frame.value - TOLERANCE_MM;
  yield {
    agrees,
    subject: `place of ${work.id} in ${opening.id}`,
    at: position.at,
    message: agrees
      ? `The back dam of "${pan.id}", ${into.text} into "${opening.id}", stands clear of the frame, so that "${work.id}" can meet it.`
      : `"${work.id}" is declared to lie at the back dam of "${pan.id}", but the dam stands ${into.text} into "${opening.id}", below a frame ${frame.text} deep: no seal can be made there.`,
    required: `a back dam at least ${frame.text} into the opening`,
    provided: into.text,
    correct: `Carry "${pan.id}" past the back of the frame ("intoOpening"), or correct "sealPosition".`,
    related: { message: 'depth of the frame', at: frame.at },
  };
}

function* weepsOf(work: Apply, opening: Opening): Iterable<StatedSize> {
  const { count, spacingMm } = work.weeps ?? {};
  if (count === undefined || spacingMm === undefined) return;
  // The best there is: the weeps evenly apart, and as far from the corners as from each other.
  const apartMm = opening.widthMm.value / (count.value + 1);
  const apart = formatQuantity(apartMm, 'length', spacingMm);
  const agrees = apartMm <= spacingMm.value + TOLERANCE_MM;
  yield {
    agrees,
    subject: `weeps of ${work.id} in ${opening.id}`,
    at: count.at,
    message: agrees
      ? `${count.value} weeps in "${work.id}" can stand ${spacingMm.text} apart along ${opening.widthMm.text} of sill.`
      : `${count.value} weeps in "${work.id}" are declared to stand ${spacingMm.text} apart, but along ${opening.widthMm.text} of sill they stand ${apart} apart at best.`,
    required: `${Math.max(1, Math.ceil((opening.widthMm.value - TOLERANCE_MM) / spacingMm.value) - 1)} weeps`,
    provided: `${count.value} weeps`,
    correct: 'Correct the count or the spacing of the weeps.',
    related: { message: 'width of the rough opening', at: opening.widthMm.at },
  };
}

function* ofUnit(set: SetIn): Iterable<StatedSize> {
  if (set.openLengthMm === undefined) return;
  for (const opening of set.openings)
    yield within(`open length below ${opening.id}`, set.openLengthMm, opening.widthMm, {
      it: `The open length of the bed under the sill of "${opening.id}"`,
      than: 'the width of the rough opening',
      correct: 'Correct "openLength".',
    });
}

/** Every pair of declared sizes that one can be held against the other, in the order of work. */
export function statedSizes(detail: Detail): StatedSize[] {
  return detail.work.flatMap((work) => {
    if (work.action === 'set') return [...ofUnit(work)];
    if (work.action !== 'apply') return [];
    return [
      ...ofSheet(work),
      ...work.openings.flatMap((opening) => [
        ...atOpening(work, opening),
        ...sealAtDam(detail, work, opening),
        ...weepsOf(work, opening),
      ]),
    ];
  });
}
