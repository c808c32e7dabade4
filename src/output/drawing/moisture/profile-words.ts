/** What the profile says in words and numbers: the month, the planes at saturation, the table of layers. */
import { heldPa } from '../../../moisture/condensation.js';
import type { MonthState, PlaneState } from '../../../moisture/month-state.js';
import { saturationPressurePa } from '../../../moisture/psychrometrics.js';
import { formatQuantity } from '../../../quantity/format.js';
import { materialText } from '../subject.js';
import { hangsText, outsideText, type CountedLayer, type Followed } from './followed.js';
import { monthName } from '../../../moisture/words.js';
import { LETTERED, letterOf } from './profile-plots.js';
import type { NumberTable } from './table.js';

/** Of air: `68 degF, vapor at 35 % of saturation`. In frost that is over ice, as the calculation has it. */
function airText(air: MonthState['air']['inside'], { units }: Followed): string {
  const share = heldPa(air) / saturationPressurePa(air.temperatureC);
  return `${units.temperature.text(air.temperatureC)}, vapor at ${Math.round(share * 100)} % of saturation`;
}

/** Why this month, and the air on both sides. */
export function monthWords(found: Followed, state: MonthState, chosen: boolean): string[] {
  const { year } = found.judged;
  const why = chosen
    ? ''
    : year.outcome === 'none'
      ? ', the coldest month: nothing condenses in any month'
      : ', the month in which most water gathers';
  return [
    `${monthName(state.month)}${why}`,
    `Inside ${airText(state.air.inside, found)}. Outside ${airText(state.air.outside, found)}` +
      `${found.judged.wall.endsAt === undefined ? '' : `, which is taken to reach "${found.judged.wall.endsAt.id}"`}.`,
    hangsText(found),
  ].filter((text) => text !== '');
}

/** One sentence for each plane where the pressures meet, and for wet surfaces. */
export function meetingWords(found: Followed, state: MonthState): string[] {
  const { amount } = found.units;
  const meeting = state.planes.filter((p) => p.atSaturation);
  const month = monthName(state.month);
  const told = meeting.slice(0, LETTERED).map(({ plane }, i) => {
    const gain = state.gains.find((g) => g.plane.index === plane.index);
    const change = gain?.gainKgPerM2 ?? 0;
    const does = change >= 0 ? `${amount.text(change)} gathers` : `${amount.text(-change)} dries`;
    return `${letterOf(i)}: ${plane.name}: ${does} in ${month}; ${amount.text(gain?.kgPerM2 ?? 0)} lies there at its end.`;
  });
  const rest = meeting.slice(LETTERED);
  const more =
    rest.length === 0 ? [] : [`${rest.length} more planes meet saturation, up to ${rest.at(-1)?.plane.name ?? ''}.`];
  const surface =
    state.wetSurface === undefined
      ? []
      : [
          `Air is saturated against the ${state.wetSurface === 'both' ? 'inside and outside surfaces' : `${state.wetSurface} surface`}: ` +
            'wet there, beyond what this method follows.',
        ];
  if (meeting.length > 0) return [...told, ...more, ...surface];
  return [`Vapor pressure stays below saturation at every plane of the wall in ${month}.`, ...surface];
}

/** Less resistance to heat is that of a film, m2 K/W. */
const LEAST_TOLD_M2KW = 0.002;

function layerRow(found: Followed, layer: CountedLayer, state: MonthState): string[] {
  const { units, system } = found;
  const { figures, moisture } = layer;
  const face = state.planes[layer.last.index] as PlaneState;
  const isFinish = figures.id !== figures.layer.id;
  const name = isFinish
    ? `${figures.id}${figures.layer.finish === undefined ? ' (not stated)' : `: ${figures.layer.finish.value}`}`
    : `${figures.id}: ${materialText(figures.layer)}`;
  const thickness =
    layer.thicknessMm === 0
      ? '-'
      : layer.supposed
        ? `not given, ${formatQuantity(layer.thicknessMm, 'length', { system })} drawn`
        : (figures.layer.thicknessMm?.text ?? formatQuantity(layer.thicknessMm, 'length', { system }));
  return [
    String(layer.number),
    name,
    thickness,
    moisture.rM2KW < LEAST_TOLD_M2KW ? '-' : units.resistance(moisture.rM2KW),
    units.permeance(layer.last.sdFromInsideM - layer.first.sdFromInsideM),
    ...faceCells(found, face.temperatureC, face.vaporPa, face.saturationPa),
  ];
}

function faceCells({ units }: Followed, temperatureC: number, vaporPa: number, saturationPa: number): string[] {
  return [units.temperature.text(temperatureC), units.pressure.text(vaporPa), units.pressure.text(saturationPa)];
}

/** Every layer with its figures and what holds at its outer face, between the air on both sides. */
export function profileTable(found: Followed, state: MonthState): NumberTable {
  const { units, judged, system } = found;
  const { inside, outside } = state.air;
  const { insideM2KW, outsideM2KW } = judged.wall.surfaces;
  const surface = state.planes[0] as PlaneState;
  const airCells = (air: typeof inside): string[] =>
    faceCells(found, air.temperatureC, heldPa(air), saturationPressurePa(air.temperatureC));
  return {
    caption: `Layers inside to outside in ${monthName(state.month)}; temperature and pressures at the outer face of each`,
    head: [
      'No.',
      'Layer',
      'Thickness',
      system === 'US' ? 'R-value' : 'Thermal resistance',
      system === 'US' ? 'Permeance' : 'Still air layer',
      'Temperature',
      'Vapor',
      'Saturation',
    ],
    rows: [
      ['', 'indoor air', '', '', '', ...airCells(inside)],
      [
        '',
        'air film inside, to the inside surface',
        '',
        units.resistance(insideM2KW),
        '',
        ...faceCells(found, surface.temperatureC, surface.vaporPa, surface.saturationPa),
      ],
      ...found.layers.map((layer) => layerRow(found, layer, state)),
      ['', `air film outside, to ${outsideText(found)}`, '', units.resistance(outsideM2KW), '', ...airCells(outside)],
    ],
  };
}
