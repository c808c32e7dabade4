/** What the picture of the year says in words and numbers. */
import type { MonthOfWater, PlanePeak } from '../../../moisture/condensation.js';
import { amountLimits, type AmountLimit } from '../../../moisture/limits.js';
import { monthState } from '../../../moisture/month-state.js';
import { hangsText, type Followed } from './followed.js';
import { monthName, percent } from '../../../moisture/words.js';
import type { NumberTable } from './table.js';

/** A plane with its own bars, or all the others together. */
export interface WetRow {
  readonly letter: string;
  readonly name: string;
  readonly peakKgPerM2: number;
  readonly peakMonth?: number;
  readonly limit?: AmountLimit;
  /** At the end of each month, from the start month on. */
  readonly kgPerM2: readonly number[];
}

/** Most planes with bars of their own; more would not be told apart. */
const MOST = 3;

/** The limit that holds at a plane: one that cannot be told may be the strictest, so it comes first. */
function limitAt({ plane }: PlanePeak): AmountLimit | undefined {
  const limits = amountLimits(plane);
  return limits.find((l) => l.mostKgPerM2 === undefined) ?? limits[0];
}

const at = (month: MonthOfWater, peak: PlanePeak): number =>
  month.water.find((w) => w.plane.index === peak.plane.index)?.kgPerM2 ?? 0;

/** The planes that are ever wet, inside to outside: the wettest and the one that decides each by itself. */
export function wetRows({ judged }: Followed): WetRow[] {
  const { planes, months } = judged.year;
  const first = (p: PlanePeak): number => (p.plane.index === judged.worst?.plane.index ? Infinity : p.kgPerM2);
  const own = new Set([...planes].sort((a, b) => first(b) - first(a)).slice(0, MOST));
  const rows = planes
    .filter((p) => own.has(p))
    .map((p, i): WetRow => {
      const limit = limitAt(p);
      return {
        letter: String.fromCharCode(65 + i),
        name: p.plane.name,
        peakKgPerM2: p.kgPerM2,
        peakMonth: p.month,
        ...(limit === undefined ? {} : { limit }),
        kgPerM2: months.map((m) => at(m, p)),
      };
    });
  const others = planes.filter((p) => !own.has(p));
  if (others.length === 0) return rows;
  const sums = months.map((m) => others.reduce((sum, p) => sum + at(m, p), 0));
  return [
    ...rows,
    {
      letter: String.fromCharCode(65 + rows.length),
      name: `${others.length} other ${others.length === 1 ? 'plane' : 'planes'} together`,
      peakKgPerM2: Math.max(...sums),
      kgPerM2: sums,
    },
  ];
}

/** The month in which the last water is gone, where it dries. */
function dryBy(months: readonly MonthOfWater[]): number | undefined {
  const lastWet = months.findLastIndex((m) => m.totalKgPerM2 > 0);
  return months[lastWet + 1]?.month;
}

/** What the year comes to, in a sentence or two. */
export function yearWords(found: Followed): string[] {
  const { judged, units } = found;
  const { year, worst } = judged;
  const { amount } = units;
  if (year.outcome === 'none' || year.startMonth === undefined || year.peakMonth === undefined)
    return ['Nothing condenses in the wall in any month.', nearest(found), hangsText(found)].filter((t) => t !== '');
  const start = monthName(year.startMonth);
  const by = dryBy(year.months);
  const end =
    year.outcome === 'dries'
      ? ` All of it has dried by the end of ${by === undefined ? 'the year' : monthName(by)}.`
      : ` After twelve months ${amount.text(year.residualKgPerM2)} remains.`;
  const limit = worst?.limit?.mostKgPerM2;
  const against =
    worst === undefined
      ? ''
      : limit === undefined
        ? ` What may gather ${worst.plane.name} is not known: the mass of "${worst.limit?.layer?.id ?? ''}" is missing.`
        : ` The limit ${worst.plane.name} is ${amount.text(limit)}; the most there is ${amount.text(worst.kgPerM2)}${worst.kgPerM2 > limit ? ', too much' : ''}.`;
  return [
    `Water gathers from ${start} on; the most is ${amount.text(year.peakKgPerM2)}, in ${monthName(year.peakMonth)}.${end}${against}`,
    hangsText(found),
  ].filter((t) => t !== '');
}

/** How near a dry wall comes to it: the greatest share of saturation at any plane inside of it. */
function nearest({ judged, wallYear }: Followed): string {
  const shares = wallYear.air.flatMap((_, m) =>
    monthState(judged.year, wallYear.air, judged.wall.surfaces, m + 1)
      .planes.slice(1, -1)
      .map((p) => ({ share: p.vaporPa / p.saturationPa, name: p.plane.name, month: m + 1 })),
  );
  const [first, ...rest] = shares;
  if (first === undefined) return '';
  const { share, name, month } = rest.reduce((a, b) => (b.share > a.share ? b : a), first);
  return `It comes nearest in ${monthName(month)}, ${name}: vapor pressure is ${Math.floor(share * 100)} % of saturation there.`;
}

/** A limit with where it comes from. */
export function limitText({ limit }: WetRow, { units }: Followed): string {
  if (limit === undefined) return '-';
  const { rule, layer, mostKgPerM2 } = limit;
  const share =
    rule.shareOfMass === undefined ? '' : `, ${percent(rule.shareOfMass)} of the mass of "${layer?.id ?? ''}"`;
  const amount = mostKgPerM2 === undefined ? 'not known' : units.amount.text(mostKgPerM2);
  return `${amount}${share} (${rule.source.citation}; ${rule.source.provenance})`;
}

/** The planes with their peaks and limits. */
export function planesTable(found: Followed, rows: readonly WetRow[]): NumberTable {
  const { amount } = found.units;
  return {
    caption: 'Where it gathers, and the most at any time of a month',
    head: ['', 'Plane', 'At most', 'In', 'Limit'],
    rows: rows.map((row) => [
      row.letter,
      row.name,
      amount.text(row.peakKgPerM2),
      row.peakMonth === undefined ? '-' : monthName(row.peakMonth),
      limitText(row, found),
    ]),
  };
}

/** Months down, planes across: for a page that writes it out. */
export function yearNumbersOf(found: Followed, rows: readonly WetRow[]): NumberTable {
  const { judged, wallYear, units } = found;
  return {
    caption: 'Water in the wall at the end of each month, and the mean air on both sides',
    head: [
      'Month',
      ...rows.map((r) => `Water ${r.name}`),
      ...(rows.length === 0 ? ['Water'] : []),
      'Outdoor temperature',
      'Outdoor vapor pressure',
      'Indoor temperature',
      'Indoor vapor pressure',
    ],
    rows: judged.year.months.map((month, i) => {
      const air = wallYear.air[month.month - 1];
      return [
        monthName(month.month),
        ...rows.map((r) => units.amount.text(r.kgPerM2[i] ?? 0)),
        ...(rows.length === 0 ? ['none'] : []),
        units.temperature.text(air?.outside.temperatureC ?? NaN),
        units.pressure.text(air?.outside.vaporPressurePa ?? NaN),
        units.temperature.text(air?.inside.temperatureC ?? NaN),
        units.pressure.text(air?.inside.vaporPressurePa ?? NaN),
      ];
    }),
  };
}
