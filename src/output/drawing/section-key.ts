/** The key of a section: the lines of the membranes and flashings it cuts, and the shared signs. */
import type { Section } from '../../geometry/section/types.js';
import type { Family } from '../../model/types.js';
import { sharedSigns } from './elevation-key.js';
import type { KeySign } from './page.js';
import type { SectionWater } from './section-water.js';
import type { Sheet } from './sheet.js';
import { strokeOf } from './strokes.js';
import type { DrawingSubject } from './subject.js';

export function sectionKey(sheet: Sheet, subject: DrawingSubject, section: Section, water: SectionWater): KeySign[] {
  const families = new Set<Family>();
  for (const s of section.strips) if (s.piece.apply !== undefined) families.add(s.piece.apply.family);
  for (const b of section.bands)
    if (b.innerMm === b.outerMm && b.layer.family !== 'paint') families.add(b.layer.family);
  return [
    ...[...families].map((family) => ({
      text: family,
      draw: ([x, y]: readonly [number, number]) =>
        sheet.add(
          'strip',
          ...strokeOf(family, [
            [x - 4.5, y],
            [x + 4, y],
          ]),
        ),
    })),
    ...sharedSigns(sheet, subject, water.any, water.wrongEnd !== undefined),
  ];
}
