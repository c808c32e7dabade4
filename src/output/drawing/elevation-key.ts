/** The key of an elevation: only signs that stand on it. */
import { endsRight } from '../../water/run/types.js';
import { overlaps } from '../../geometry/rect.js';
import type { Rect } from '../../geometry/types.js';
import type { Family } from '../../model/types.js';
import { findingMark, waterLine, waterOut, workNumber, wrongEnd } from './marks.js';
import type { KeySign } from './page.js';
import { GREY, PEN, type Sheet } from './sheet.js';
import { shade } from './strokes.js';
import type { DrawingSubject } from './subject.js';
import { line, polygon } from './svg.js';

function swatch(sheet: Sheet, family: Family): KeySign {
  return {
    text: family,
    draw: ([x, y]) => {
      const box = polygon(
        [
          [x - 4, y - 1.6],
          [x + 4, y - 1.6],
          [x + 4, y + 1.6],
          [x - 4, y + 1.6],
        ],
        { fill: shade(sheet, family, false), stroke: '#000', 'stroke-width': PEN.light },
      );
      sheet.add('fill', box);
    },
  };
}

/** Signs for water and findings that any view can have. */
export function sharedSigns(sheet: Sheet, subject: DrawingSubject, hasWater: boolean, hasWrongEnd: boolean): KeySign[] {
  const levels = [...new Set(subject.findings.map((f) => f.result.level))];
  return [
    { text: 'step in the order of work', draw: ([x, y]) => workNumber(sheet, [x, y], undefined) },
    ...(hasWater
      ? [
          {
            text: 'way of water',
            draw: ([x, y]: readonly [number, number]) => {
              waterLine(
                sheet,
                [
                  [x - 4.5, y],
                  [x + 3, y],
                ],
                false,
                4,
              );
              waterOut(sheet, [x + 3.4, y], [1, 0]);
            },
          },
        ]
      : []),
    ...(hasWrongEnd
      ? [{ text: 'water ends where it must not', draw: ([x, y]: readonly [number, number]) => wrongEnd(sheet, [x, y]) }]
      : []),
    ...levels.map((level) => ({
      text: `finding: ${level}`,
      draw: ([x, y]: readonly [number, number]) => findingMark(sheet, [x, y], undefined, level),
    })),
  ];
}

/** @param window the part of the face that is drawn */
export function elevationKey(sheet: Sheet, subject: DrawingSubject, window: Rect): KeySign[] {
  const { face, water } = subject;
  const families = new Set<Family>();
  for (const p of face.pieces)
    if (p.sheds && p.apply !== undefined && p.face.some((r) => overlaps(r, window))) families.add(p.apply.family);
  const joints = face.joints.some((j) =>
    j.orientation === 'vertical'
      ? j.line > window.u0 && j.line < window.u1 && j.from < window.v1 && j.to > window.v0
      : j.line > window.v0 && j.line < window.v1 && j.from < window.u1 && j.to > window.u0,
  );
  return [
    ...[...families].map((f) => swatch(sheet, f)),
    {
      text: 'edge covered by later work',
      draw: ([x, y]) => sheet.add('light', line([x - 4, y], [x + 4, y], { 'stroke-dasharray': '1 0.7', stroke: GREY })),
    },
    ...(joints
      ? [
          {
            text: 'sheathing joint',
            draw: ([x, y]: readonly [number, number]) =>
              sheet.add(
                'light',
                line([x - 4, y], [x + 4, y], { 'stroke-dasharray': '4 1.2', 'stroke-width': PEN.edge }),
              ),
          },
        ]
      : []),
    ...sharedSigns(
      sheet,
      subject,
      water.face.length > 0,
      [...water.face, ...water.pans].some((p) => !endsRight(p.end)),
    ),
  ];
}
