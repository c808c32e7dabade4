/**
 * How the cost of tracing water grows with openings and penetrations scattered over a wall: cells, paths, and the time
 * for cells and search together, as multiples of the smallest wall.
 */
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const dist = path.resolve(process.env.LAPWRIGHT_DIST ?? path.join(import.meta.dirname, '../dist'));
const { buildDetail, buildFace, readDocuments, runOfWater, sourceFile } = await import(
  pathToFileURL(path.join(dist, 'index.js')).href
);

/** Repeatable numbers from 0 to 1. */
function scatter(seed) {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

function wall(openings, penetrations) {
  const random = scatter(7);
  const holes = Array.from(
    { length: openings },
    (_, k) =>
      `  - { id: w${k}, at: { right: ${(k % 4) * 80} in, up: ${Math.floor(k / 4) * 110} in }, roughOpening: { width: 40 in, height: 60 in, depth: 6 in }, unit: { mounting: flange, flange: 1-3/8 in, waterTest: 4.5 psf } }`,
  );
  // Between the columns of windows, so that none stands in an opening.
  const pipes = Array.from({ length: penetrations }, (_, k) => {
    const right = (k % 3) * 80 + 58 + Math.floor(random() * 400) / 100;
    return `  - { id: p${k}, at: { right: ${right} in, up: ${Math.floor(random() * 28000) / 100} in }, diameter: 1 in }`;
  });
  return `kind: detail
id: bench
title: Wall with ${openings} openings and ${penetrations} penetrations
wall: [{ id: sheathing, material: plywood, sheet: { width: 48 in, height: 96 in } }]
openings:
${holes.join('\n')}
${pipes.length === 0 ? '' : `penetrations:\n${pipes.join('\n')}\n`}work:
  - { id: seams, place: sheathing joints, product: liquid, extends: 1 in }
  - { id: pan, place: sill, product: liquid, ontoWall: 6 in, pastJambs: 6 in, intoOpening: full, slope: 6 %, backDam: 1-1/4 in, endDams: 6 in }
  - { id: jambs, place: jambs, product: liquid, ontoWall: 6 in, intoOpening: full }
  - { id: head, place: head, product: liquid, ontoWall: 6 in, pastJambs: 7 in, downJambs: 2 in, intoOpening: full }
${pipes.length === 0 ? '' : '  - { id: collars, place: penetration, product: liquid, extends: 3 in }\n'}  - { id: field, place: field, product: liquid, lapsOnto: { opening flashing: 2 in } }
  - { id: set, set: unit, bedding: { head: sealed, jambs: sealed, sill: open } }
  - { id: counter, place: [flange jambs, flange head], product: liquid, ontoWall: 4 in }
---
{ kind: product, id: liquid, name: Fluid-applied membrane, family: fluid-applied membrane }
`;
}

/** Prints one line for each size. */
export async function water(print) {
  print('Tracing water, by size of the wall (cells and search together, best of 5):');
  let smallest;
  for (const [openings, penetrations] of [
    [1, 0],
    [12, 0],
    [12, 50],
    [12, 100],
    [12, 200],
  ]) {
    const { documents, problems } = await readDocuments(sourceFile('bench.yaml', wall(openings, penetrations)), {
      named: true,
    });
    if (problems.length > 0) throw new Error(problems[0].message);
    const products = new Map(documents.filter((d) => d.kind === 'product').map((d) => [d.id, d]));
    const built = buildDetail(
      documents.find((d) => d.kind === 'detail'),
      { products, specifications: [] },
    );
    if (built.detail === undefined) throw new Error(built.problems[0].message);
    let best = Infinity;
    let cells = 0;
    let paths = 0;
    for (let round = 0; round < 5; round++) {
      const start = performance.now();
      const face = buildFace(built.detail);
      paths = runOfWater(built.detail, face).face.length;
      cells = face.grid.cells.length;
      best = Math.min(best, performance.now() - start);
    }
    smallest ??= best;
    print(
      `  ${String(openings).padStart(2)} openings, ${String(penetrations).padStart(3)} penetrations: ${String(cells).padStart(7)} cells, ${String(paths).padStart(4)} paths, ${best.toFixed(1)} ms, ${(best / smallest).toFixed(0)}x`,
    );
  }
}
