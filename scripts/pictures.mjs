/**
 * Draws the pictures of docs/pictures/: one of each view, from the demo library and a wall that gathers water, and a map
 * of where a wall fits. With `--check` says whether those there are the same (exit status 1 when they are not). A folder
 * on the command line takes the place of docs/.
 */
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { load, put, ROOT } from './documentation.mjs';

const { picturesOf, mapOf } = await load(`
  import { runReview } from './src/cli/run.js';
  import { BUILT_IN_RULES } from './generated/rules.js';
  import { drawWhereMap } from './src/output/where/map.js';
  import { whereFits } from './src/where/where.js';
  import { drawingSubject, drawView } from './src/output/drawing/views.js';

  const runOf = (inputs, cwd) => runReview({
    inputs, cwd, packs: [], allowPacks: false, today: '2026-01-15', skipOthers: false, dependents: false,
  });

  /** Draws the map of where the one detail of a file fits. */
  export async function mapOf(file, cwd) {
    const run = await runOf([file], cwd);
    const detail = run.review.details.map(run.detailOf)[0];
    if (detail === undefined) throw new Error(file + ' holds no detail that can be placed.');
    return drawWhereMap(whereFits(detail, { rules: BUILT_IN_RULES, settings: run.settings }), 'both');
  }

  /** Draws the wanted views of details: [detail id, view] each. */
  export async function picturesOf(inputs, cwd, wanted) {
    const run = await runOf(inputs, cwd);
    const titles = new Map(run.review.rules.map((r) => [r.id, r.title]));
    return wanted.map(([id, view]) => {
      const reviewed = run.review.details.find((d) => d.id === id);
      const detail = reviewed === undefined ? undefined : run.detailOf(reviewed);
      if (detail === undefined) throw new Error('There is no detail "' + id + '" that can be drawn.');
      const results = run.review.results.filter((r) => r.documentId === id);
      return drawView(drawingSubject(detail, results, (rule) => titles.get(rule) ?? rule), view);
    });
  }
`);

/** One picture of each view; a detail that was returned shows how findings are marked. */
const WANTED = [
  ['X-1', 'elevation'],
  ['W-1', 'section-head'],
  ['W-1', 'section-sill'],
  ['W-1', 'section-jamb'],
  ['W-6', 'section-base'],
  ['W-1', 'layers'],
  ['M-1', 'profile'],
  ['M-1', 'year'],
];

const given = process.argv.slice(2);
if (!given.includes('--check'))
  mkdirSync(path.resolve(given[0] ?? path.join(ROOT, 'docs'), 'pictures'), { recursive: true });
const pictures = await picturesOf(['fixtures/demo', 'fixtures/moisture/cold-wood-wall.yaml'], ROOT, WANTED);
pictures.forEach((svg, i) => put(path.join('pictures', `${WANTED[i][1]}.svg`), svg));
put(path.join('pictures', 'where.svg'), await mapOf('fixtures/where/P-1-painted-board.yaml', ROOT));
