/** Promises of every drawing, over all demo and published details in every view they have. */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatQuantity } from '../src/quantity/format.js';
import type { Detail, Measured } from '../src/model/types.js';
import { drawView, VIEWS, viewsOf } from '../src/output/drawing/views.js';
import { allViews, collisions, drawables, readXml, subjectOf, textLines } from './support/drawings.js';
import { ROOT } from './support/review-folder.js';

const demo = await drawables('fixtures/demo');
const published = await drawables('fixtures/published');
const moisture = await drawables('fixtures/moisture');

/** The quantity a dimension names: `pan.ontoWall`, `window.roughOpening.width`, `board.thickness`. */
function quantityOf(detail: Detail, name: string): Measured | undefined {
  const [id = '', ...fields] = name.split('.');
  const opening = detail.openings.find((o) => o.id === id);
  switch (fields.join('.')) {
    case 'roughOpening.width':
      return opening?.widthMm;
    case 'roughOpening.height':
      return opening?.heightMm;
    case 'unit.flange':
      return opening?.unit?.flangeMm;
    case 'unit.frameDepth':
      return opening?.unit?.frameDepthMm;
    case 'thickness':
      return detail.layers.find((l) => l.id === id)?.thicknessMm;
    case 'lapsOnto': {
      const lap = detail.work
        .flatMap((w) => (w.action === 'apply' && w.id === id ? w.lapsOnto : []))
        .find((l) => l.onto === 'opening flashing')?.lapMm;
      // The field cannot lap farther than the flashing reaches: the drawing shows what results.
      const jamb = detail.work.flatMap((w) =>
        w.action === 'apply' && w.places.some((p) => p.value === 'jambs') ? (w.ontoWallMm?.value ?? 0) : [],
      );
      return lap === undefined ? undefined : { ...lap, value: Math.min(lap.value, ...jamb) };
    }
    default: {
      const work = detail.work.find((w) => w.id === id);
      if (work?.action !== 'apply') return undefined;
      if (fields[0] === 'intoOpening' && work.intoOpeningMm === 'full') return work.openings[0]?.depthMm;
      return (work as unknown as Record<string, Measured | undefined>)[`${fields[0] ?? ''}Mm`];
    }
  }
}

const isCovered = (name: string): boolean => /^[\w-]+\.[\w.]+$/.test(name);

describe.each([...demo, ...published, ...moisture].map((d) => [d.name, d] as const))('%s', (_, { detail, subject }) => {
  const views = allViews(subject);

  it('is drawn in all its views as well-formed XML', () => {
    expect(views.length).toBeGreaterThan(0);
    for (const { svg } of views) expect(readXml(svg)[0]?.name).toBe('svg');
  });
  it('has no text on other text or on a sign, and none off the sheet', () => {
    expect(views.flatMap(({ view, svg }) => collisions(svg).map((c) => `${view}: ${c}`))).toEqual([]);
  });
  it('dimensions what the detail says, in its own units', () => {
    for (const { view, svg } of views) {
      for (const { text, attributes } of textLines(svg)) {
        const name = attributes['data-dimension'];
        if (name === undefined) continue;
        const said = isCovered(name) ? quantityOf(detail, name) : undefined;
        if (isCovered(name)) expect(said, `${view}: ${name} is a field of the detail`).toBeDefined();
        if (said === undefined) continue;
        expect(Number(attributes['data-mm']), `${view}: ${name}`).toBeCloseTo(said.value, 0);
        expect(text, `${view}: ${name}`).toBe(
          name.endsWith('.thickness') ? said.text : formatQuantity(said.value, 'length', said),
        );
      }
    }
  });
  it('lists every comment on its elevation, and marks none more often than it was found', () => {
    for (const { view, svg } of views) {
      const signs = readXml(svg).filter((e) => e.attributes['data-finding'] !== undefined);
      const marks = signs.map((e) => e.attributes['data-finding']);
      // The table stands at the left margin, where no drawing reaches.
      const inTable = signs
        .filter((e) => e.attributes['d']?.startsWith('M7 '))
        .map((e) => e.attributes['data-finding']);
      // Once in the drawing for each side, once in the table; the signs of the key are blank.
      for (const { number } of subject.findings) {
        const count = marks.filter((m) => m === String(number)).length;
        const sides = subject.findings.filter((f) => f.number === number).length;
        if (view === 'elevation') expect(inTable, `${view} ${number}`).toContain(String(number));
        expect(count, `${view} ${number}`).toBeLessThanOrEqual(sides + 1);
      }
    }
  });
  it('is the same to the byte when drawn again', () => {
    for (const { view, svg } of views) expect(drawView(subject, view)).toBe(svg);
  });
});

describe('the views of a detail', () => {
  const of = (id: string) => viewsOf(demo.find((d) => d.detail.id === id)!.detail);

  it('are sections around an opening where there is one', () => {
    expect(of('W-1')).toEqual([
      'elevation',
      'section-head',
      'section-sill',
      'section-jamb',
      'layers',
      'profile',
      'year',
    ]);
  });
  it('are a section at the base where the base is described', () => {
    expect(of('W-6')).toEqual(['elevation', 'section-base', 'layers', 'profile', 'year']);
  });
  it('are refused by name when the detail has nothing to show in them', () => {
    const { subject } = demo.find((d) => d.detail.id === 'W-5')!;
    expect(() => drawView(subject, 'section-sill')).toThrow(
      'W-5 has nothing to show in the view section-sill; its views: elevation, layers, profile, year.',
    );
  });
});

describe('the views of heat and vapor', () => {
  const subjectOfId = (id: string) => [...demo, ...published].find((d) => d.detail.id === id)!.subject;

  it('are there only where the wall can be followed, and name what is missing elsewhere', () => {
    const subject = subjectOfId('canada-head-flashing');
    expect(viewsOf(subject.detail)).not.toContain('profile');
    for (const view of ['profile', 'year'] as const)
      expect(() => drawView(subject, view)).toThrow(
        `nothing to show in the view ${view}; its views: elevation, section-head, section-sill, section-jamb, layers. ` +
          'The wall is not followed through the year: the product "sheet-barrier" declares no dry-cup permeance. ' +
          'Missing: product.permeance.dry.',
      );
  });
  it('name the place where it is the place that is missing', () => {
    expect(() => drawView(subjectOfId('apa-6N'), 'year')).toThrow(
      'Missing: project.place.county, project.place.station.',
    );
  });
});

describe('hostile text', () => {
  it('stays text: names, titles and materials are escaped, controls written out', async () => {
    const evil = '</text><script>alert(1)</script><svg onload=x> & "quoted"';
    const quoted = JSON.stringify(`${evil} \u202e`);
    const subject = await subjectOf(
      `kind: project
id: place
title: place
place: { zone: 5A }
---
kind: detail
id: d
title: ${quoted}
wall:
  - { id: board, material: ${quoted}, permeance: 10 perm, family: interior board }
openings:
  - { id: w, roughOpening: { width: 40 in, height: 40 in, depth: 6 in } }
work:
  - { id: p, place: sill, material: ${quoted}, family: metal flashing, ontoWall: 4 in, intoOpening: full }
`,
    );
    const views = allViews(subject);
    expect(views.map((v) => v.view)).toEqual(expect.arrayContaining(['elevation', 'profile', 'year']));
    for (const { view, svg } of views) {
      const elements = readXml(svg);
      expect(
        elements.map((e) => e.name),
        view,
      ).not.toContain('script');
      expect(
        elements.filter((e) => e.name === 'svg'),
        view,
      ).toHaveLength(1);
      expect(
        elements.some((e) => 'onload' in e.attributes),
        view,
      ).toBe(false);
      expect(svg, view).not.toContain('\u202e');
      expect(elements.map((e) => e.text).join(' '), view).toContain('</text>');
    }
  });
});

describe('golden drawings', () => {
  const GOLDEN = path.join(ROOT, 'tests/golden/drawings');
  const shown: Record<(typeof VIEWS)[number], string> = {
    elevation: 'X-1',
    'section-head': 'W-1',
    'section-sill': 'W-1',
    'section-jamb': 'W-1',
    'section-base': 'W-6',
    layers: 'W-1',
    profile: 'M-1',
    year: 'M-2',
  };
  const all = [...demo, ...moisture];
  // `npx vitest run tests/drawings.test.ts -u` writes them anew; look at each before committing it.
  it.each(VIEWS)('%s', async (view) => {
    const { subject } = all.find((d) => d.detail.id === shown[view])!;
    await expect(drawView(subject, view)).toMatchFileSnapshot(path.join(GOLDEN, `${shown[view]}.${view}.svg`));
  });
  // SI and US, dry and wet, thick beside thin, a limit out of sight: each is another layout.
  it.each([
    ['M-2', 'profile'],
    ['M-3', 'profile'],
    ['M-4', 'profile'],
    ['M-4', 'year'],
    ['W-1', 'year'],
  ] as const)('%s %s', async (id, view) => {
    const { subject } = all.find((d) => d.detail.id === id)!;
    await expect(drawView(subject, view)).toMatchFileSnapshot(path.join(GOLDEN, `${id}.${view}.svg`));
  });
});
