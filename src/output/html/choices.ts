/**
 * Choosing a finding without scripts: its address is that of the finding, and these rules show what belongs to it in
 * the drawings. A browser that does not know `:has()` passes over them and shows the drawings as they are.
 */
import type { DetailPart } from './detail.js';
import { commentsOf } from '../comments.js';
import { classOfFinding, findingName, markName } from './names.js';

export function choices(parts: readonly DetailPart[]): string {
  const selectors = parts.flatMap(({ number, group, drawings }) =>
    commentsOf([group]).flatMap((_, i) => {
      const finding = i + 1;
      const shown = drawings.flatMap((drawing, v) =>
        drawing.parts.marks.some((m) => m.finding === finding) ? [`#${markName(number, v + 1, finding)}`] : [],
      );
      const isDrawn = shown.length > 0 || drawings.some((d) => d.waysOf.has(finding));
      const chosen = [`#${findingName(number, finding)}`, ...shown].join(',');
      return isDrawn ? [`:root:has(:is(${chosen}):target) .${classOfFinding(number, finding)}`] : [];
    }),
  );
  return selectors.length === 0 ? '' : `${selectors.join(',\n')}{--chosen:1}\n`;
}
