/**
 * Trims the county outlines of the us-atlas package to what a map on a sheet of paper shows, and writes
 * data/map/us-counties.json. Run by maintainers, when the package has new outlines:
 *
 *     node scripts/county-outlines.mjs
 *
 * The outlines come projected, with Alaska and Hawaii set in below the southwest. Borders are shared arcs; each arc is
 * thinned once, so that neighbors still meet. A county that would shrink to nothing keeps all its points.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

/** Steps of the grid for each unit of the source, whose width is 975: one step is about 0.6 km. */
const STEPS = 8;
/** How far a thinned border may stray, in steps: on a sheet of A4 eight are a fifth of a millimeter. */
const TOLERANCE = 8;

const atlas = JSON.parse(
  readFileSync(createRequire(import.meta.url).resolve('us-atlas/counties-albers-10m.json'), 'utf8'),
);
const { scale, translate } = atlas.transform;

/** An arc on our grid, in absolute coordinates. */
function onGrid(arc) {
  let [x, y] = [0, 0];
  return arc.map(([dx, dy]) => {
    x += dx;
    y += dy;
    return [x * scale[0] + translate[0], y * scale[1] + translate[1]].map((v) => Math.round(v * STEPS));
  });
}
const isSame = (a, b) => a[0] === b[0] && a[1] === b[1];
const withoutRepeats = (points) => {
  const kept = points.filter((p, i) => i === 0 || !isSame(p, points[i - 1]));
  // An arc has two ends, even where they fall on one place.
  return kept.length === 1 ? [kept[0], kept[0]] : kept;
};

function distance([px, py], [ax, ay], [bx, by]) {
  const [dx, dy] = [bx - ax, by - ay];
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / length2));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}

/** Leaves out points that lie within the tolerance of the line between those kept (Douglas and Peucker, 1973). */
function thinned(points) {
  if (points.length <= 2) return points;
  const [first, last] = [points[0], points.at(-1)];
  let [far, most] = [0, 0];
  for (let i = 1; i < points.length - 1; i++) {
    const d = distance(points[i], first, last);
    if (d > most) [far, most] = [i, d];
  }
  if (most <= TOLERANCE && !isSame(first, last)) return [first, last];
  // A ring is split at its farthest point whatever the distance: it must not fold into a line.
  return [...thinned(points.slice(0, far + 1)).slice(0, -1), ...thinned(points.slice(far))];
}

const whole = atlas.arcs.map((arc) => withoutRepeats(onGrid(arc)));
const arcs = whole.map((points) => withoutRepeats(thinned(points)));

const pointsOf = (ring) =>
  ring.flatMap((i) => {
    const points = i < 0 ? [...arcs[~i]].reverse() : arcs[i];
    return points.slice(0, -1);
  });
function area(ring) {
  const points = pointsOf(ring);
  return Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [nx, ny] = points[(i + 1) % points.length];
      return sum + x * ny - nx * y;
    }, 0) / 2,
  );
}
const polygonsOf = (g) => (g.type === 'Polygon' ? [g.arcs] : g.arcs);

const counties = atlas.objects.counties.geometries;
for (const county of counties) {
  const rings = polygonsOf(county).flat();
  if (rings.some((ring) => area(ring) >= 8)) continue;
  for (const i of rings.flat()) arcs[i < 0 ? ~i : i] = whole[i < 0 ? ~i : i];
}
/** Islands and lakes that are no more than a speck are left out, unless nothing else of the county would be left. */
const SPECK = 48;
const uses = new Map();
for (const i of counties.flatMap((county) => polygonsOf(county).flat(2))) {
  const at = i < 0 ? ~i : i;
  uses.set(at, (uses.get(at) ?? 0) + 1);
}
// A part that a neighbor encloses stays: without it the neighbor would have a hole.
const isSpeck = (ring) => area(ring) < SPECK && ring.every((i) => uses.get(i < 0 ? ~i : i) === 1);
/** Half the side of the square that stands for a county without any area, in steps. */
const HALF_SIDE = 4;
function square([x, y]) {
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ];
  arcs.push(corners.map(([dx, dy]) => [x + dx * HALF_SIDE, y + dy * HALF_SIDE]));
  return arcs.length - 1;
}
const geometries = counties.map((county) => {
  const polygons = polygonsOf(county);
  // The source draws one city as a line; its border is no border of its state.
  if (polygons.flat().every((ring) => area(ring) === 0))
    return {
      type: 'Polygon',
      id: county.id,
      properties: { square: true },
      arcs: [[square(pointsOf(polygons[0][0])[0])]],
    };
  const largest = Math.max(...polygons.map((p) => area(p[0])));
  const kept = polygons
    .filter((p) => area(p[0]) === largest || !isSpeck(p[0]))
    .map((p) => p.filter((ring, i) => i === 0 || !isSpeck(ring)));
  return kept.length === 1
    ? { type: 'Polygon', id: county.id, arcs: kept[0] }
    : { type: 'MultiPolygon', id: county.id, arcs: kept };
});
geometries.sort((a, b) => (a.id < b.id ? -1 : 1));

// Only the arcs that are still used, numbered anew.
const numbers = new Map();
const renumbered = (i) => {
  const at = i < 0 ? ~i : i;
  if (!numbers.has(at)) numbers.set(at, numbers.size);
  return i < 0 ? ~numbers.get(at) : numbers.get(at);
};
const deep = (value) => (Array.isArray(value) ? value.map(deep) : renumbered(value));
const finished = geometries.map((g) => ({ ...g, arcs: deep(g.arcs) }));
const origin = [0, 1].map((axis) => Math.min(...[...numbers.keys()].flatMap((i) => arcs[i].map((p) => p[axis]))));
const deltas = (points) =>
  points.map(([x, y], i) => (i === 0 ? [x - origin[0], y - origin[1]] : [x - points[i - 1][0], y - points[i - 1][1]]));
const used = [...numbers.keys()].map((i) => deltas(arcs[i]));

const target = path.resolve(import.meta.dirname, '../data/map');
mkdirSync(target, { recursive: true });
writeFileSync(
  path.join(target, 'us-counties.json'),
  `${JSON.stringify({
    type: 'Topology',
    transform: { scale: [1, 1], translate: [0, 0] },
    objects: { counties: { type: 'GeometryCollection', geometries: finished } },
    arcs: used,
  })}\n`,
);
console.log(`${finished.length} counties, ${used.length} arcs, ${used.flat().length} points`);
