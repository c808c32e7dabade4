import { housesAsGuide } from '../../src/engine/clauses.js';
import { againstLimit } from '../../src/engine/against-limit.js';
import type { OfferedLimit } from '../../src/engine/limits.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { fieldPieces, type AppliedPiece } from '../../src/geometry/around-opening.js';
import { bounding } from '../../src/geometry/rect.js';
import type { Detail } from '../../src/model/types.js';
import { HABIT, habit, isLooseSheet } from '../../src/water/laps.js';

const IRC: Source = {
  basis: 'code',
  citation: 'IRC R703.2',
  provenance: 'seen',
  url: 'https://up.codes/s/water-resistive-barrier',
  codes: ['IRC'],
};
const NBC: Source = {
  basis: 'code',
  citation: 'NBC 9.27.3.3',
  provenance: 'seen',
  url: 'https://www.buildingcode.online/2002.html',
  codes: ['NBC'],
};
const ORDER: Source = { basis: 'physics', citation: 'water runs down', provenance: 'computed' };
/** Least laps of sheet barriers, mm, with the text of the source. */
const LAPS = {
  course: { IRC: { value: 50.8, text: '2 in' }, NBC: { value: 100, text: '100 mm' } },
  end: { IRC: { value: 152.4, text: '6 in' }, NBC: { value: 100, text: '100 mm' } },
} as const;

/** The code of the project as code; the US figure as a guide where another code or none is named. */
function ofCode(detail: Detail, which: keyof typeof LAPS): OfferedLimit[] {
  const title = detail.project?.code?.title;
  if (title === 'NBC') return [{ ...LAPS[which].NBC, source: NBC }];
  return [{ ...LAPS[which].IRC, source: title === 'IRC' ? IRC : housesAsGuide(IRC) }];
}

/** Horizontal laps between the courses of a sheet barrier, and the laps of its ends. */
export default defineRule({
  id: 'lap/course-lap',
  title: 'Laps of sheet courses',
  summary: 'Each course of a sheet barrier laps over the one below by enough, and so do the ends of the sheets.',
  level: 'error',
  reads: [
    'work.roll',
    'work.courseLap',
    'work.endLap',
    'work.courses',
    'product.roll',
    'product.least.lap',
    'product.least.endLap',
    'project.code',
  ],
  sources: [IRC, NBC, HABIT],
  parameters: {
    advisedLap: {
      type: 'length',
      default: '0 in',
      meaning: 'lap of courses beyond the code, 6 in by habit; 0 in asks for no more than the code',
      source: HABIT,
    },
  },
  *review({ detail, face, limit, number }) {
    // A flap lapped down again is part of its course.
    const sheets = fieldPieces(face)
      .filter((p) => !p.id.includes('#flap@'))
      .filter((p) => isLooseSheet(p.apply.family) || p.apply.family === 'self-adhered membrane');
    const low = (p: AppliedPiece): number => bounding(p.face)?.v0 ?? 0;
    const high = (p: AppliedPiece): number => bounding(p.face)?.v1 ?? 0;
    const courses = [...sheets].sort((a, b) => low(a) - low(b) || a.index - b.index);
    const judged = new Set<string>();
    for (let k = 1; k < courses.length; k++) {
      const [lower, upper] = [courses[k - 1] as AppliedPiece, courses[k] as AppliedPiece];
      const { apply } = upper;
      const subject = `${upper.id} over ${lower.id}`;
      const related = [{ message: 'the course below', at: lower.at }];
      const lap = face.lapBetween(upper, lower);
      // Two whole fields one on the other are layers, not courses.
      if (low(upper) <= low(lower) + 0.1) continue;
      // All courses of one work lap alike: the first pair stands for them.
      if (upper.apply === lower.apply && judged.has(apply.id)) continue;
      judged.add(apply.id);
      judged.add(lower.apply.id);
      if (lap !== undefined && lap.over === lower) {
        yield {
          kind: 'fail',
          at: apply.courses?.at ?? upper.at,
          subject,
          related,
          sources: [ORDER, ...this.sources],
          message: `The course "${lower.id}" lies over the course "${upper.id}" above it, so water runs in behind "${lower.id}".`,
          required: 'upper course over lower course',
          provided: 'lower course over upper course',
          correct: 'Lay the courses from the bottom up ("courses: bottom up").',
        };
        continue;
      }
      if (apply.courseLapMm === undefined && lap === undefined) {
        yield {
          kind: 'open',
          at: upper.at,
          subject,
          related,
          missing: ['work.courseLap'],
          message: `"${apply.id}" does not say how far its courses lap; add "courseLap".`,
        };
        continue;
      }
      yield againstLimit({
        subject,
        related,
        at: apply.courseLapMm?.at ?? upper.at,
        dimension: 'length',
        comparison: 'at least',
        like: apply.courseLapMm,
        provided: Math.max(0, high(lower) - low(upper)),
        limit: limit({
          property: 'lap',
          subject: 'field membrane',
          product: upper.product,
          comparison: 'at least',
          offered: [...ofCode(detail, 'course'), ...habit(number('advisedLap'))],
        }),
        sentence: (p) => `The course "${upper.id}" laps ${p} over "${lower.id}" below it`,
        correct: (required) => `Lap the courses by ${required} ("courseLap").`,
        missing: ['product.least.lap', 'project.code'],
      });
    }
    for (const apply of new Set(sheets.map((p) => p.apply))) {
      // Without a roll width the courses cannot be laid out; what the author states is then all there is.
      const single =
        !judged.has(apply.id) &&
        sheets.filter((p) => p.apply === apply).length === 1 &&
        apply.rollMm === undefined &&
        apply.product?.rollWidthMm === undefined;
      if (single && apply.courseLapMm !== undefined) {
        yield againstLimit({
          subject: `courses of ${apply.id}`,
          at: apply.courseLapMm.at,
          dimension: 'length',
          comparison: 'at least',
          like: apply.courseLapMm,
          provided: apply.courseLapMm.value,
          limit: limit({
            property: 'lap',
            subject: 'field membrane',
            product: apply.product,
            comparison: 'at least',
            offered: [...ofCode(detail, 'course'), ...habit(number('advisedLap'))],
          }),
          sentence: (p) => `The courses of "${apply.id}" lap ${p}`,
          correct: (required) => `Lap the courses by ${required} ("courseLap").`,
          missing: ['product.least.lap', 'project.code'],
        });
      } else if (single) {
        yield {
          kind: 'open',
          at: apply.at,
          subject: `courses of ${apply.id}`,
          missing: ['work.courseLap', 'work.roll'],
          message: `"${apply.id}" is a sheet and says neither how wide a course is nor how far the courses lap; add "roll" and "courseLap".`,
        };
      }
      if (apply.endLapMm === undefined) {
        yield {
          kind: 'open',
          at: apply.at,
          subject: `sheet ends of ${apply.id}`,
          missing: ['work.endLap'],
          message: `"${apply.id}" does not say how far the ends of its sheets lap at vertical joints; add "endLap".`,
        };
        continue;
      }
      yield againstLimit({
        subject: `sheet ends of ${apply.id}`,
        at: apply.endLapMm.at,
        dimension: 'length',
        comparison: 'at least',
        like: apply.endLapMm,
        provided: apply.endLapMm.value,
        limit: limit({
          property: 'end lap',
          subject: 'field membrane',
          product: apply.product,
          comparison: 'at least',
          offered: isLooseSheet(apply.family) ? ofCode(detail, 'end') : [],
        }),
        sentence: (p) => `The sheet ends of "${apply.id}" lap ${p}`,
        correct: (required) => `Lap the sheet ends by ${required} ("endLap").`,
        missing: ['product.least.endLap', 'a specification requirement for "end lap"'],
      });
    }
  },
});
