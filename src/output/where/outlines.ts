/** Outlines of the counties as path data, on the grid of the data file. */
import { feature, mesh } from 'topojson-client';
import type { Position } from 'geojson';
import type { GeometryCollection, Topology } from 'topojson-specification';
import { once, readData } from '../../climate/data-file.js';

export const OUTLINES_FILE = 'map/us-counties.json';

export interface Outlines {
  /** Path data by FIPS number, in the order of the numbers. */
  readonly counties: ReadonlyMap<string, string>;
  /** Borders of the states and coasts. */
  readonly states: string;
  readonly width: number;
  readonly height: number;
}

/** Steps from point to point are short numbers; a minus sign parts two numbers as well as a space does. */
function relative(points: readonly Position[], isRing: boolean): string {
  let [x, y] = [0, 0];
  const steps = points.slice(0, isRing ? -1 : undefined).map((point, i) => {
    const [px = 0, py = 0] = point;
    const step = `${i === 0 ? 'M' : i === 1 ? 'l' : ' '}${px - x} ${py - y}`;
    [x, y] = [px, py];
    return step;
  });
  return `${steps.join('').replaceAll(' -', '-')}${isRing ? 'z' : ''}`;
}

/**
 * Every county of the map; read and made once.
 *
 * @throws Error when the data file is missing
 * @see data/map/NOTICE for the origin and for how far the borders were thinned
 */
export const outlines = once((): Outlines => {
  // The file is our own, written by scripts/county-outlines.mjs.
  const topology = JSON.parse(readData(OUTLINES_FILE)) as Topology<{ counties: GeometryCollection }>;
  const found = topology.objects.counties;
  const counties = new Map<string, string>();
  let [width, height] = [0, 0];
  for (const { id, geometry } of feature(topology, found).features) {
    const polygons =
      geometry.type === 'Polygon'
        ? [geometry.coordinates]
        : geometry.type === 'MultiPolygon'
          ? geometry.coordinates
          : [];
    const rings = polygons.flat();
    for (const [x = 0, y = 0] of rings.flat()) [width, height] = [Math.max(width, x), Math.max(height, y)];
    counties.set(String(id), rings.map((ring) => relative(ring, true)).join(''));
  }
  const stateOf = ({ id }: { id?: string | number | undefined }): string => String(id).slice(0, 2);
  // A square stands for a city without area in the source; what is on one side only is coast or outer border.
  const borders = mesh(topology, found, (a, b) => (a === b ? a.properties === undefined : stateOf(a) !== stateOf(b)));
  return { counties, states: borders.coordinates.map((line) => relative(line, false)).join(''), width, height };
});
