/** What twelve months of vapor diffusion at a weather station say of a wall. */
import type { Answer } from './answer.js';
import type { UnitSystem } from '../model/unit-system.js';
import { monthsOf, type Station } from '../climate/stations.js';
import { monthName } from '../moisture/words.js';
import { AMOUNT_RULES } from '../moisture/limits.js';
import { judgeWall, type WallJudgement, type WallOutcome } from '../moisture/wall/judge.js';
import { airAt } from '../moisture/wall/of-detail.js';
import { waterText } from '../moisture/words.js';
import type { ProjectIndoor } from '../moisture/wall/indoor.js';
import type { RainLeftOut } from '../moisture/wall/exposed-masonry.js';
import type { ReadWall } from '../moisture/wall/wall.js';

export interface MonthsAnswer {
  readonly answer: Answer;
  /** One clause without capital and full stop. */
  readonly reason: string;
  /** Fields that would settle it. */
  readonly missing: readonly string[];
  /** The rest is absent where no year could be followed. With figures halfway between their bounds. */
  readonly outcome?: WallOutcome;
  /** Where the water that decides gathers: `between "studs" and "sheathing"`; absent for a dry wall. */
  readonly plane?: string;
  /** Month of the greatest water at the plane, 1 to 12. */
  readonly month?: number;
  readonly peakKgPerM2?: number;
  /** Most that the materials at the plane bear, where that is known. */
  readonly limitKgPerM2?: number;
  /** In the whole wall after twelve months from a dry start. */
  readonly residualKgPerM2?: number;
}

/** Where the limits on condensate come from; see `amountLimits`. */
export const CONDENSATE_LIMITS = AMOUNT_RULES.filter((r) => r.family === 'DIN 4108-3').map((r) => r.source);

type Figures = Omit<MonthsAnswer, 'answer' | 'reason' | 'missing'>;

function figures({ typical }: WallJudgement): Figures {
  const { outcome, worst, year } = typical;
  const { residualKgPerM2 } = year;
  if (worst === undefined) return { outcome, peakKgPerM2: year.peakKgPerM2, residualKgPerM2 };
  return {
    outcome,
    residualKgPerM2,
    plane: worst.plane.name,
    month: worst.month,
    peakKgPerM2: worst.kgPerM2,
    ...(worst.limit?.mostKgPerM2 === undefined ? {} : { limitKgPerM2: worst.limit.mostKgPerM2 }),
  };
}

/** What happens in the wall with figures halfway between their bounds. */
function told(found: Figures, system: UnitSystem): string {
  const text = (kgPerM2: number | undefined): string => waterText(kgPerM2 ?? 0, system);
  if (found.plane === undefined) return 'stays dry';
  const month = monthName(found.month ?? 1);
  const peak = `${text(found.peakKgPerM2)} gather ${found.plane} up to ${month}`;
  switch (found.outcome) {
    case 'remains':
      return `${peak} and ${text(found.residualKgPerM2)} remain after twelve months`;
    case 'too much':
      return `${peak}, more than ${text(found.limitKgPerM2)}`;
    case 'no limit':
      return `${peak} and dry; how much the material bears is not known`;
    default:
      return `${peak} and dry`;
  }
}

/** The same answer in words of this room. */
function answerOf(judgement: WallJudgement): Answer {
  if (judgement.kind === 'accepted') return 'fits';
  if (judgement.kind === 'refused') return 'estimate over limit';
  const { outcome } = judgement.typical;
  return outcome === 'dry' || outcome === 'dries' ? 'fits with conditions' : 'cannot tell';
}

/**
 * Follows a wall through a typical year at a station.
 *
 * @param rain what is said of masonry that stores rain: diffusion alone then tells of no wall that it fits
 */
export function monthsAnswer(
  read: ReadWall,
  station: Station,
  indoor: ProjectIndoor,
  system: UnitSystem,
  rain?: RainLeftOut,
): MonthsAnswer {
  const judgement = judgeWall(read, airAt({ months: monthsOf(station) }, indoor));
  const byVapor = answerOf(judgement);
  const found = figures(judgement);
  const happens = told(found, system);
  const hangs =
    judgement.hangsOn.length === 0
      ? ''
      : `, with figures halfway between their bounds; it depends on ${judgement.hangsOn.join(', ')}`;
  const unfollowed = byVapor === 'estimate over limit' ? undefined : rain;
  if (unfollowed !== undefined)
    return {
      answer: 'cannot tell',
      reason: `${happens} by diffusion alone${hangs}. ${unfollowed.told}`,
      missing: [...unfollowed.missing, ...judgement.hangsOn],
      ...found,
    };
  return { answer: byVapor, reason: `${happens}${hangs}`, missing: judgement.hangsOn, ...found };
}

/** Where there is nothing to follow. */
export function notFollowed(reason: string, missing: readonly string[]): MonthsAnswer {
  return { answer: 'cannot tell', reason, missing };
}
