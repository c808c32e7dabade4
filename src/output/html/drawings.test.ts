import path from 'node:path';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { readMarkup } from '../../../tests/support/markup.js';
import { runReview, type Run } from '../../cli/run.js';
import { commentsOf, resultsOf, type Comment } from '../comments.js';
import { byDetail, type DetailResults } from '../grouping.js';
import * as layers from '../drawing/layers.js';
import { drawingsFor, type Drawing } from './drawings.js';
import { figure } from './figure.js';
import { toHtml } from 'hast-util-to-html';

const ROOT = path.resolve(import.meta.dirname, '../../..');

async function reviewed(...inputs: string[]): Promise<Run> {
  const rest = { packs: [], allowPacks: false, today: '2026-01-15', skipOthers: false, dependents: false };
  return runReview({ inputs, cwd: ROOT, ...rest });
}

function drawn(
  run: Run,
  id: string,
): { group: DetailResults; comments: Comment[]; drawings: Drawing[]; notDrawn: string[] } {
  const group = byDetail(run.review).find((g) => g.detail.id === id);
  const detail = group === undefined ? undefined : run.detailOf(group.detail);
  if (group === undefined || detail === undefined) throw new Error(`${id} is not there`);
  return { group, comments: commentsOf([group]), ...drawingsFor(detail, group.findings, (rule) => rule) };
}

let demo: Run;
beforeAll(async () => {
  demo = await reviewed('fixtures/demo');
});

describe('the drawings of a detail on the page', () => {
  test('are every view that the detail has', () => {
    const { drawings, notDrawn } = drawn(demo, 'X-1');
    expect(notDrawn).toEqual([]);
    expect(drawings.map((d) => d.title)).toEqual([
      'Elevation',
      'Section at the head',
      'Section at the sill',
      'Section at the jamb',
      'Layers from outside to inside',
      'Heat and vapor through the wall',
      'Water in the wall through a year',
    ]);
    expect(drawn(demo, 'N-3').drawings.map((d) => d.title)).toContain('Section at the base');
  });

  test('leave out a view that cannot be drawn, say why, and keep the others', () => {
    const spy = vi.spyOn(layers, 'drawLayers').mockImplementation(() => {
      throw new Error('no room');
    });
    const { drawings, notDrawn } = drawn(demo, 'X-1');
    spy.mockRestore();
    expect(drawings).toHaveLength(6);
    expect(notDrawn).toEqual(['Not drawn: Layers from outside to inside. no room']);
  });

  test('mark findings by the numbers of their comments in the report', () => {
    const { comments, drawings } = drawn(demo, 'X-1');
    const elevation = drawings[0]!;
    expect(elevation.parts.marks.length).toBeGreaterThan(10);
    for (const { finding, y } of elevation.parts.marks) {
      expect(finding).toBeLessThanOrEqual(comments.length);
      expect(y).toBeLessThan(elevation.parts.drawingEnd);
    }
    const numbers = elevation.parts.marks.map((m) => m.finding);
    for (const { number, same } of comments)
      expect(numbers.filter((n) => n === number).length).toBeLessThanOrEqual(same.length + 1);
    // The drawing itself says of the others that they stand at no one place.
    const unmarked = comments.filter((c) => !numbers.includes(c.number)).map((c) => c.lead.ruleId);
    expect(unmarked.length).toBeGreaterThan(0);
    expect(unmarked).not.toContain('lap/reverse-lap');
  });
});

describe('the path of a finding on the drawings', () => {
  const waysOf = (run: Run, id: string, ruleId: string, view: string): number[] => {
    const { comments, drawings } = drawn(run, id);
    const ways = drawings.find((d) => d.title === view)?.waysOf;
    return comments.flatMap((c) =>
      resultsOf(c).some((f) => f.ruleId === ruleId) ? [ways?.get(c.number)?.length ?? 0] : [],
    );
  };

  test('is the line of the water that goes behind the piece it names', () => {
    const { comments, drawings } = drawn(demo, 'X-1');
    const { number = 0 } =
      comments.find((c) =>
        resultsOf(c).some((f) => f.ruleId === 'lap/reverse-lap' && f.message.includes('"head-strip" lies over')),
      ) ?? {};
    const lines = drawings[0]!.waysOf.get(number) ?? [];
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(drawings[0]!.parts.waterLines).toContain(line);
    const withoutPath = comments.filter((c) => resultsOf(c).every((f) => f.flow === undefined)).map((c) => c.number);
    for (const other of withoutPath) expect(drawings[0]!.waysOf.has(other)).toBe(false);
  });

  test('is the line over the pan for a leak that stays there', () => {
    // The section at a sill shows one way of water, whole or in stretches.
    const [leak] = waysOf(demo, 'X-1', 'water/unit-leak', 'Section at the sill');
    expect(leak).toBeGreaterThan(0);
    for (const lines of waysOf(demo, 'X-1', 'lap/reverse-lap', 'Section at the sill')) expect(lines).toBe(0);
  });

  test('is found for every run of water that ends wrong in the published details', async () => {
    const run = await reviewed('fixtures/published/broken');
    const found = byDetail(run.review).flatMap(({ detail, findings }) => {
      const wrong = findings.some((f) => f.ruleId === 'water/run-of-water');
      return wrong ? waysOf(run, detail.id, 'water/run-of-water', 'Elevation').map((n) => [detail.id, n] as const) : [];
    });
    expect(found.length).toBeGreaterThan(3);
    for (const [id, lines] of found) expect(lines, id).toBeGreaterThan(0);
  });
});

describe('a drawing as part of the page', () => {
  const html = (id: string): string => {
    const { comments, drawings } = drawn(demo, id);
    return drawings
      .map((d, i) =>
        toHtml(
          figure(
            d,
            { detail: 1, view: i + 1, open: true, onPaper: true },
            comments.map((c) => c.lead),
          ),
          {
            allowDangerousHtml: true,
          },
        ),
      )
      .join('');
  };

  test('shares no name with another, and every pattern it uses is its own', () => {
    const { tags } = readMarkup(html('X-1'));
    const ids = tags.flatMap((t) => t.attributes['id'] ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const used = tags.flatMap((t) => Object.values(t.attributes).flatMap((v) => /^url\(#(.*)\)$/.exec(v)?.[1] ?? []));
    expect(used.length).toBeGreaterThan(0);
    for (const name of used) expect(ids).toContain(name);
  });

  test('has a name and a description, and each mark says its finding and leads there', () => {
    const { comments } = drawn(demo, 'X-1');
    const { tags } = readMarkup(html('X-1'));
    const ids = tags.map((t) => t.attributes['id']);
    for (const { attributes } of tags.filter((t) => t.attributes['role'] === 'img'))
      for (const name of (attributes['aria-labelledby'] ?? 'none').split(' ')) expect(ids).toContain(name);
    const marks = tags.filter((t) => t.attributes['class']?.startsWith('mark '));
    expect(marks.length).toBeGreaterThan(20);
    for (const { attributes } of marks) {
      const number = Number(/finding-(\d+)$/.exec(attributes['href'] ?? '')?.[1]);
      expect(attributes['aria-label']).toBe(
        `Finding ${number}, ${comments[number - 1]!.lead.level}: ${comments[number - 1]!.lead.message}`,
      );
    }
  });

  test('has its numbers beside it in a table, where it is made of them', () => {
    const { comments, drawings } = drawn(demo, 'W-1');
    const profile = drawings.find((d) => d.title === 'Heat and vapor through the wall')!;
    const year = drawings.find((d) => d.title === 'Water in the wall through a year')!;
    expect(drawings.filter((d) => d.numbers !== undefined)).toEqual([profile, year]);
    // Indoor air, the film inside, five layers and the finish of one, the film outside.
    expect(profile.numbers?.rows.map((r) => r[0])).toEqual(['', '', '1', '2', '3', '4', '5', '6', '']);
    expect(year.numbers?.rows.map((r) => r[0])).toHaveLength(12);
    for (const row of [...profile.numbers!.rows, ...year.numbers!.rows])
      for (const cell of row) expect(cell).not.toMatch(/NaN|undefined|no value/);
    const page = toHtml(
      figure(
        profile,
        { detail: 1, view: 6, open: false, onPaper: false },
        comments.map((c) => c.lead),
      ),
      {
        allowDangerousHtml: true,
      },
    );
    expect(page).toContain('<summary>The same in numbers</summary>');
    for (const cell of profile.numbers!.rows[3]!) expect(page).toContain(`<td>${cell}</td>`);
    expect(page).toMatch(/^<details id="[^"]+" class="view numeric tall off-paper"><summary>Heat and vapor/);
  });

  test('has scale bar and drawing in one picture, so that they never differ in scale', () => {
    const { tags } = readMarkup(html('X-1'));
    for (const { inside } of tags.filter((t) => t.name === 'use'))
      expect(inside.filter((n) => n === 'svg')).toHaveLength(2);
    expect(tags.filter((t) => t.name === 'use')).toHaveLength(7);
  });
});
