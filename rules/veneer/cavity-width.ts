import { BRICK_FLASHING } from '../../src/engine/clauses.js';
import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Outcome, Source } from '../../src/engine/result.js';
import { anchoredVeneer } from '../../src/model/veneer.js';
import type { Detail, Family, Layer, Measured } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { nominalMm } from '../../src/water/laps.js';

const CODE: Source = {
  basis: 'code',
  citation: 'IRC R703.8.4.2 and TMS 402, air space behind anchored masonry veneer',
  provenance: 'from memory, confirm',
};

/** What stands between the structure and a veneer and takes up room. */
const ROOM: ReadonlySet<Family> = new Set<Family>([
  'air space',
  'drainage mat',
  'board insulation',
  'insulating sheathing',
  'spray foam',
]);
const STRUCTURE: ReadonlySet<Family> = new Set<Family>(['sheathing', 'concrete', 'masonry', 'framing']);

const total = (layers: readonly Layer[]): number => layers.reduce((sum, l) => sum + (l.thicknessMm?.value ?? 0), 0);

/** What the ties of a veneer bridge: everything with a width between the structure and the veneer. */
function bridged(detail: Detail, veneer: Layer): Layer[] {
  const structure = detail.layers.findLast(
    (l) => l.index < veneer.index && (STRUCTURE.has(l.family) || l.framing !== undefined),
  );
  return structure === undefined
    ? []
    : detail.layers.filter((l) => l.index > structure.index && l.index < veneer.index && ROOM.has(l.family));
}

function untold(layer: Layer, veneer: Layer, subject: string): Outcome {
  return {
    kind: 'open',
    subject,
    at: layer.at,
    missing: ['wall.thickness'],
    message: `"${layer.id}" behind the veneer "${veneer.id}" does not say how wide it is; add "thickness".`,
  };
}

/** The clear space behind an anchored veneer is wide enough to stay open, and no wider than its ties are made for. */
export default defineRule({
  id: 'veneer/cavity-width',
  title: 'Width of the cavity',
  summary:
    'Behind an anchored masonry veneer there is a clear space that mortar does not bridge, no wider than usual ties span.',
  level: 'warning',
  reads: ['wall.material', 'wall.thickness', 'wall.family'],
  sources: [BRICK_FLASHING, CODE],
  parameters: {
    clear: { type: 'length', default: '1 in', meaning: 'least clear width of the cavity', source: BRICK_FLASHING },
    ties: {
      type: 'length',
      default: '4-1/2 in',
      meaning: 'greatest distance from structure to veneer without ties that are engineered; later codes allow more',
      source: BRICK_FLASHING,
    },
  },
  *review({ detail, number }) {
    const veneer = anchoredVeneer(detail);
    if (veneer === undefined) return;
    const { layer, spaces } = veneer;
    const like: Measured | undefined = spaces[0]?.thicknessMm ?? layer.thicknessMm;
    const written = (mm: number): string => formatQuantity(mm, 'length', like ?? { system: 'US' });
    const clear = spaces.find((s) => s.thicknessMm === undefined);
    if (clear !== undefined) yield untold(clear, layer, 'clear width of the cavity');
    else
      yield againstLimit({
        subject: 'clear width of the cavity',
        at: spaces[0]?.thicknessMm?.at ?? layer.at,
        dimension: 'length',
        comparison: 'at least',
        like,
        provided: total(spaces),
        limit: {
          value: nominalMm(number('clear')),
          text: written(number('clear')),
          source: BRICK_FLASHING,
          others: [{ value: nominalMm(number('clear')), text: written(number('clear')), source: CODE }],
        },
        sentence: (p) =>
          spaces.length === 0
            ? `No air space is drawn behind the veneer "${layer.id}"; its cavity is ${p} wide`
            : `The cavity behind the veneer "${layer.id}" is ${p} wide`,
        correct: (required) => `Leave ${required} clear between the veneer and what lies behind it.`,
        missing: [],
      });
    const parts = bridged(detail, layer);
    const unknown = parts.find((l) => l.thicknessMm === undefined);
    if (parts.length === 0 || (clear !== undefined && unknown === clear)) return;
    if (unknown !== undefined) yield untold(unknown, layer, 'distance from structure to veneer');
    else
      yield againstLimit({
        subject: 'distance from structure to veneer',
        at: parts[0]?.at ?? layer.at,
        dimension: 'length',
        comparison: 'at most',
        like,
        provided: total(parts),
        limit: { value: number('ties'), text: written(number('ties')), source: BRICK_FLASHING, others: [] },
        sentence: (p) => `The veneer "${layer.id}" stands ${p} in front of the structure`,
        correct: (required) =>
          `Have the ties engineered for that distance and say so in a deviation, or keep ${required} between structure and veneer.`,
        missing: [],
      });
  },
});
