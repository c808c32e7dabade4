import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { pieceName } from '../../src/geometry/piece-name.js';
import type { Detail } from '../../src/model/types.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { waterHeadMm } from '../../src/water/head.js';
import { RAIN_SHARE, shareOfDesign } from '../../src/water/rain-pressure.js';
import { testPressureOf } from '../../src/water/test-pressure.js';
import { looseShingleLaps, windRiseMm } from '../../src/water/wind-rise.js';

const HEAD: Source = {
  basis: 'physics',
  citation: 'rise of water under a lap: wind head p / (rho g) and capillary rise',
  provenance: 'computed',
  url: 'https://obc.hyperlinked.ca/volume-2/appendix-a/explanatory-b/b-9.27.3.8.(5)-appx',
};
const GAP: Source = {
  basis: 'practice',
  citation: 'gap of a loose lap 1 mm',
  provenance: 'common practice, no source',
};

/** Pressure that drives rain against the laps: the highest at which a unit of the detail must not leak, else a share of the design pressure. */
function rainPressure(
  detail: Detail,
  share: number,
): { pressurePa: number; from: string; sources: readonly Source[] } | undefined {
  const tested = detail.openings
    .flatMap((opening) => testPressureOf(opening, detail.project) ?? [])
    .sort((a, b) => b.pressurePa - a.pressurePa)[0];
  if (tested !== undefined) return { pressurePa: tested.pressurePa, from: tested.from, sources: [HEAD] };
  const design = detail.project?.designPressurePa;
  if (design === undefined) return undefined;
  return {
    pressurePa: design.value * share,
    from: shareOfDesign(share, design.text),
    sources: [HEAD, RAIN_SHARE.source],
  };
}

/** A lap that is right in direction still lets water over it when wind lifts the water higher than it is long. */
export default defineRule({
  id: 'water/wind-driven-rise',
  title: 'Laps against wind-driven rise',
  summary: 'A loose lap is longer than wind and capillarity lift water under its edge.',
  level: 'error',
  reads: [
    'work.place',
    'work.lapsOnto',
    'work.courseLap',
    'work.edge',
    'openings.unit.waterTest',
    'project.wind.designPressure',
  ],
  sources: [HEAD, RAIN_SHARE.source, GAP],
  parameters: {
    share: {
      type: 'fraction',
      default: RAIN_SHARE.text,
      meaning: 'share of the design wind pressure that drives rain, where no unit with a water test pressure is shown',
      source: RAIN_SHARE.source,
    },
    gap: { type: 'length', default: '1 mm', meaning: 'gap of a loose lap, for capillary rise', source: GAP },
  },
  *review({ detail, face, number }) {
    const laps = looseShingleLaps(face);
    if (laps.length === 0) return;
    const rain = rainPressure(detail, number('share'));
    if (rain === undefined) {
      yield {
        kind: 'open',
        message: `${laps.length === 1 ? 'One loose lap' : `${laps.length} loose laps`} cannot be held against wind-driven rain: neither the water test pressure of a unit nor the design wind pressure of the project is declared.`,
        at: detail.at,
        subject: 'loose laps',
        missing: ['openings.unit.waterTest', 'project.wind.designPressure'],
        sources: [HEAD],
      };
      return;
    }
    const riseMm = windRiseMm(rain.pressurePa, number('gap'));
    const headMm = waterHeadMm(rain.pressurePa);
    for (const { over, under, heightMm } of laps) {
      const text = formatQuantity(riseMm, 'length', { system: 'US' });
      const needed = formatQuantity(riseMm, 'length', { system: 'US', toward: 'up' });
      yield {
        ...againstLimit({
          subject: `lap of ${over.id} over ${under.id}`,
          at: over.at,
          dimension: 'length',
          comparison: 'at least',
          provided: heightMm,
          limit: { value: riseMm, text: needed, source: HEAD, others: [] },
          sentence: (p) =>
            `${pieceName(over).replace(/^./, (c) => c.toUpperCase())} laps ${p} over ${pieceName(under)}; at ${rain.from} wind and capillarity lift water ${text} under its edge`,
          correct: (required) => `Make the lap ${required} long, or seal or bond its edge.`,
          missing: [],
          related: [{ message: `upper edge of ${pieceName(under)}`, at: under.at }],
        }),
        sources: [...rain.sources, GAP],
        // The head alone is physics; what only the capillary rise in an assumed gap adds is a warning.
        ...(heightMm >= headMm - 0.1 && heightMm < riseMm - 0.1 ? { level: 'warning' as const } : {}),
        ...(heightMm < riseMm - 0.1
          ? {
              flow: [
                { message: `Water runs down ${pieceName(over)} to its lower edge.`, at: over.at },
                {
                  message: `Wind lifts it ${text} under the edge, over the upper edge of ${pieceName(under)} and behind it.`,
                  at: under.at,
                  essential: true,
                },
              ],
            }
          : {}),
      };
    }
  },
});
