/** Where a wall fits, as a map of the counties: one sheet with key, notes and title block. */
import { answerFills } from './map-fills.js';
import { outlines, type Outlines } from './outlines.js';
import {
  answerOf,
  assumptionsOf,
  cautionsOf,
  question,
  showsMonths,
  showsTable,
  sourcesOf,
  zonesByAnswer,
  type Wanted,
} from './text.js';
import { ANSWERS, counted, MEANINGS, type Answer } from '../../where/answer.js';
import type { InCounty, Where } from '../../where/where.js';
import { drawNotes, drawTitleBlock, PAGE } from '../drawing/page.js';
import { INK, LINE_HEIGHT, Sheet, SIZE } from '../drawing/sheet.js';
import { element, escapeXml, num, polygon } from '../drawing/svg.js';
import { textWidthMm, wrapMm } from '../drawing/text-size.js';

const INNER = { x0: PAGE.margin, x1: PAGE.width - PAGE.margin } as const;
const ROW = SIZE.text * LINE_HEIGHT;
/** Line weights, mm: states stand out, counties only part their fills. */
const BORDER = { state: 0.24, county: 0.05, grey: '#666' } as const;

/** What is drawn, for the title block. */
const VIEWS: Readonly<Record<Wanted, string>> = {
  table: 'Map of the counties by the code table',
  months: 'Map of the counties by the months at the nearest station',
  both: 'Map of the counties; of code table and months the worse of the two',
};

function countyPaths(
  where: Where,
  found: Outlines,
  wanted: Wanted,
): { byAnswer: Map<Answer, string[]>; drawn: InCounty[] } {
  const byAnswer = new Map<Answer, string[]>(ANSWERS.map((a) => [a, []]));
  const drawn: InCounty[] = [];
  for (const one of where.counties) {
    const d = found.counties.get(one.county.fips);
    if (d === undefined) continue;
    drawn.push(one);
    const { name, stateCode } = one.county;
    const title = element('title', {}, escapeXml([`${name}, ${stateCode}`, one.zone ?? ''].join(' ').trim()));
    byAnswer.get(answerOf(one, wanted))?.push(`<path data-fips="${one.county.fips}" d="${d}">${title}</path>`);
  }
  return { byAnswer, drawn };
}

/** The map itself. @returns what was drawn */
function drawCounties(sheet: Sheet, where: Where, wanted: Wanted, y0: number): InCounty[] {
  const found = outlines();
  const scale = (INNER.x1 - INNER.x0) / found.width;
  const fills = answerFills(sheet, 1 / scale);
  const { byAnswer, drawn } = countyPaths(where, found, wanted);
  const place = `translate(${num(INNER.x0)} ${num(y0)}) scale(${scale.toFixed(6)})`;
  const groups = [...byAnswer].map(([answer, paths]) =>
    element('g', { 'data-answer': answer, fill: fills[answer] }, paths.join('\n')),
  );
  const borders = element('path', {
    d: found.states,
    fill: 'none',
    stroke: INK,
    'stroke-width': BORDER.state / scale,
    'stroke-linejoin': 'round',
  });
  sheet.add(
    'fill',
    element(
      'g',
      { transform: place, stroke: BORDER.grey, 'stroke-width': BORDER.county / scale },
      `${groups.join('\n')}\n${borders}`,
    ),
  );
  sheet.reserve({ x0: INNER.x0, y0, x1: INNER.x1, y1: y0 + found.height * scale });
  return drawn;
}

/** Key of the answers with how many counties got each. */
function drawKey(sheet: Sheet, drawn: readonly InCounty[], wanted: Wanted): void {
  const columns: [string, Answer[]][] = [
    ...(wanted === 'both' ? [['on this map', drawn.map((c) => answerOf(c, 'both'))] as [string, Answer[]]] : []),
    ...(showsTable(wanted) ? [['by code table', drawn.map((c) => c.table.answer)] as [string, Answer[]]] : []),
    ...(showsMonths(wanted) ? [['by months', drawn.map((c) => c.months.answer)] as [string, Answer[]]] : []),
  ];
  const fills = answerFills(sheet, 1);
  let y = sheet.bottom + 4;
  sheet.text([INNER.x0, y], `Key, and number of counties (${drawn.length} drawn)`, { bold: true });
  const right = (k: number): number => INNER.x1 - (columns.length - 1 - k) * 24;
  columns.forEach(([title], k) => sheet.text([right(k), y], title, { anchor: 'end' }));
  y += 1.6;
  const textRoom = right(0) - 14 - (INNER.x0 + 11);
  for (const answer of ANSWERS) {
    const lines = wrapMm(`${answer}: ${MEANINGS[answer]}`, textRoom, SIZE.text, 2);
    const height = Math.max(5, lines.length * ROW + 1.4);
    const corners = [
      [INNER.x0, y],
      [INNER.x0 + 9, y],
      [INNER.x0 + 9, y + 4],
      [INNER.x0, y + 4],
    ] as const;
    sheet.add('fill', polygon(corners, { fill: fills[answer], stroke: INK, 'stroke-width': 0.18 }));
    lines.forEach((text, i) => sheet.text([INNER.x0 + 11, y + 2.9 + i * ROW], text));
    columns.forEach(([, answers], k) =>
      sheet.text([right(k), y + 2.9], String(counted(answers)[answer]), {
        anchor: 'end',
        data: { 'data-count': `${columns[k]?.[0] ?? ''}: ${answer}` },
      }),
    );
    y += height;
  }
  sheet.reserve({ x0: INNER.x0, y0: y - 1, x1: INNER.x1, y1: y - 0.6 });
}

/** Why so many cannot be told, in the order of how many. */
function untold(drawn: readonly InCounty[], wanted: Wanted): string[] {
  const counts = new Map<string, number>();
  for (const { table, months } of drawn) {
    const reasons = [
      ...(showsTable(wanted) && table.answer === 'cannot tell' ? [table.reasons.join(' ')] : []),
      ...(showsMonths(wanted) && months.outcome === undefined && months.answer === 'cannot tell'
        ? [months.reason]
        : []),
    ];
    for (const reason of reasons) counts.set(reason, (counts.get(reason) ?? 0) + 1);
  }
  const most = [...counts].filter(([, n]) => n > 1).sort((a, b) => b[1] - a[1]);
  return most.slice(0, 2).map(([reason, n]) => `Cannot be told in ${n} counties: ${reason}`);
}

/** Counties of the table that the map does not show. */
function undrawn(where: Where, drawn: readonly InCounty[]): string[] {
  const shown = new Set(drawn);
  const missing = where.counties.filter((c) => !shown.has(c));
  const states = [...new Set(missing.map((c) => c.county.stateName))];
  return missing.length === 0 ? [] : [`Not on the map: ${missing.length} counties of ${states.join(', ')}.`];
}

/**
 * Draws the map.
 *
 * @returns SVG text; the same bytes for the same answers
 * @throws Error when the outlines that come with the program are missing
 */
export function drawWhereMap(where: Where, wanted: Wanted): string {
  const { detail, zones } = where;
  const sheet = new Sheet(PAGE.width);
  const title = `Where ${detail.id} fits`;
  const room = INNER.x1 - INNER.x0;
  let y = PAGE.margin + 4;
  const size = Math.min(SIZE.title, (SIZE.title * room) / textWidthMm(title, SIZE.title, { bold: true }));
  sheet.text([INNER.x0, y], title, { size, bold: true });
  y += 1;
  for (const text of wrapMm(question(where, wanted), room, SIZE.text)) {
    y += ROW;
    sheet.text([INNER.x0, y], text);
  }
  const drawn = drawCounties(sheet, where, wanted, y + 2);
  drawKey(sheet, drawn, wanted);
  drawNotes(sheet, 'Notes', [
    ...(showsTable(wanted) ? [`By the code table: ${zonesByAnswer(zones, (z) => z.table.answer)}.`] : []),
    ...(showsMonths(wanted)
      ? [`By the months at typical stations of the zones: ${zonesByAnswer(zones, (z) => z.months.answer)}.`]
      : []),
    ...untold(drawn, wanted),
    ...assumptionsOf(where, wanted),
    'Alaska is drawn at about a third of the scale; Alaska and Hawaii stand out of their places.',
    ...undrawn(where, drawn),
    ...where.gaps,
  ]);
  // The last one stands in the title block.
  drawNotes(sheet, 'Left out, and cautions', cautionsOf(wanted).slice(0, -1));
  drawNotes(sheet, 'Sources', [
    ...sourcesOf(where, wanted),
    'Outlines: us-atlas, from boundaries of the US Census Bureau.',
  ]);
  drawTitleBlock(sheet, detail, VIEWS[wanted], undefined);
  return sheet.toSvg(title, `${detail.title}. ${question(where, wanted)}`, PAGE.margin);
}
