/** Which water test pressure an opening has to stand, from what its documents say. */
import { WATER_TEST, waterHeadMm, waterTestPressurePa } from './head.js';
import { formatQuantity } from '../quantity/format.js';
import type { Measured, Opening, Project } from '../model/types.js';

export interface TestPressure {
  readonly pressurePa: number;
  readonly headMm: number;
  /** What it was taken from, to print after the pressure: `15 % of grade 30 psf, class CW`. */
  readonly from: string;
  /** The quantity it was taken from: its place and its units. */
  readonly stated: Measured;
  /** True when it was worked out from class and grade, and so rests on the shares of the standard. */
  readonly byShare: boolean;
}

/**
 * The pressure at which the unit must not leak.
 *
 * The declared test pressure goes before class and grade. Without both, the design wind pressure of the project
 * stands for the grade, because no smaller grade covers the wall; without a class, the share of R, LC and CW.
 *
 * @returns `undefined` when none of these is declared, or none is above zero
 * @see WATER_TEST.source
 */
export function testPressureOf(opening: Opening, project: Project | undefined): TestPressure | undefined {
  const unit = opening.unit;
  const of = (pressurePa: number, from: string, stated: Measured, byShare: boolean): TestPressure => ({
    pressurePa,
    headMm: waterHeadMm(pressurePa),
    from,
    stated,
    byShare,
  });
  if (unit?.waterTestPa !== undefined && unit.waterTestPa.value > 0) {
    return of(unit.waterTestPa.value, `declared water test pressure ${unit.waterTestPa.text}`, unit.waterTestPa, false);
  }
  const country = project?.code?.title === 'NBC' ? 'CA' : 'US';
  const named = unit?.performanceClass?.value;
  const share = (grade: Measured, what: string): TestPressure => {
    const performanceClass = named ?? 'R';
    const pressurePa = waterTestPressurePa(performanceClass, grade.value, country);
    const percent = `${WATER_TEST.shareOfGrade[performanceClass] * 100} %`;
    const limits =
      pressurePa === WATER_TEST.leastPa
        ? ', raised to the least'
        : pressurePa === WATER_TEST.mostPa[country]
          ? ', capped at the most'
          : '';
    const pressure = formatQuantity(pressurePa, 'pressure', grade);
    return of(
      pressurePa,
      `${pressure}: ${percent} of ${what}, ${named === undefined ? 'the share of classes R, LC and CW' : `class ${named}`}${limits}`,
      grade,
      true,
    );
  };
  if (named !== undefined && unit?.gradePa !== undefined && unit.gradePa.value > 0)
    return share(unit.gradePa, `grade ${unit.gradePa.text}`);
  const design = project?.designPressurePa;
  return design === undefined || design.value <= 0 ? undefined : share(design, `design wind pressure ${design.text}`);
}
