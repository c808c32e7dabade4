/** The unit and its perimeter seals where a section cuts them. */
import type { Apply, Detail, Opening, Place, SetIn, Side } from '../../model/types.js';
import type { SealCut, SealPlace, Strip, UnitCut } from './types.js';

/** Drawn where the documents are silent (common practice, no source); marked as supposed. */
const USUAL_FRAME_MM = 82.55;
const USUAL_GAP_MM = 9.525;
const USUAL_JOINT_MM = 9.525;

/** The perimeter work that runs along a side; the last when there are several. Naming no sides means all four. */
export function perimeterWork(
  detail: Detail,
  opening: Opening,
  place: Extract<Place, 'interior perimeter' | 'exterior perimeter'>,
  side: Side,
): Apply | undefined {
  return detail.work.findLast(
    (w): w is Apply =>
      w.action === 'apply' &&
      // Rods and primers are parts of a seal, not seals.
      w.family !== 'backer rod' &&
      w.family !== 'primer' &&
      w.openings.includes(opening) &&
      w.places.some((p) => p.value === place) &&
      (w.sides.length === 0 || w.sides.some((s) => s.value === side)),
  );
}

/** Where the upturned inboard edge of the pan stands, inward from the face; `undefined` without one. */
export function damDepthMm(strips: readonly Strip[]): number | undefined {
  const pan = panStrip(strips);
  return pan === undefined ? undefined : Math.max(...pan.runs.filter((r) => r.on === 'return').map((r) => r.toMm));
}

/** The pan with a back dam that the section cuts. */
export function panStrip(strips: readonly Strip[]): Strip | undefined {
  return strips.findLast((s) => (s.backDamMm ?? 0) > 0 && s.runs.some((r) => r.on === 'return'));
}

/** The frame of the unit on one side; `undefined` when the detail has no unit. */
export function cutUnit(detail: Detail, opening: Opening, side: Side): UnitCut | undefined {
  const set = detail.work.findLast(
    (w): w is SetIn => w.action === 'set' && w.sets === 'unit' && w.openings.includes(opening),
  );
  const { unit } = opening;
  if (unit === undefined && set === undefined) return undefined;
  const frameMm = unit?.frameDepthMm?.value ?? USUAL_FRAME_MM;
  const interior = perimeterWork(detail, opening, 'interior perimeter', side)?.joint?.widthMm?.value;
  const exterior = perimeterWork(detail, opening, 'exterior perimeter', side)?.joint?.widthMm?.value;
  const shimMm = set?.shims?.gapMm?.value;
  const gapMm = side === 'sill' ? (shimMm ?? interior ?? exterior) : (interior ?? exterior ?? shimMm);
  // A flange lies on the face and holds the frame there. A recessed frame stands where its set-back says, else against the
  // inboard end.
  const flanged = unit?.mounting?.value === 'flange';
  const dam = detail.work.findLast(
    (w): w is Apply =>
      w.action === 'apply' &&
      w.openings.includes(opening) &&
      w.places.some((p) => p.value === 'sill') &&
      w.backDamMm !== undefined,
  );
  const into = dam?.intoOpeningMm === 'full' ? opening.depthMm?.value : dam?.intoOpeningMm?.value;
  const inboardEnd = (into ?? opening.depthMm?.value ?? frameMm) - (interior ?? USUAL_JOINT_MM);
  const setBack = flanged ? undefined : unit?.setBackMm?.value;
  const innerMm = flanged ? -frameMm : setBack === undefined ? -Math.max(frameMm, inboardEnd) : -setBack - frameMm;
  return {
    opening,
    ...(set === undefined ? {} : { set }),
    innerMm,
    outerMm: innerMm + frameMm,
    gapMm: gapMm ?? USUAL_GAP_MM,
    ...(flanged && unit?.flangeMm !== undefined ? { flangeMm: unit.flangeMm.value } : {}),
    assumed: {
      frameDepth: unit?.frameDepthMm === undefined,
      position: !flanged && setBack === undefined,
      gap: gapMm === undefined,
    },
  };
}

function sealPlace(work: Apply, interior: boolean, side: Side, strips: readonly Strip[]): SealPlace {
  if (!interior) return 'outer edge of frame';
  if (work.fillsCavity?.value === true) return 'under unit';
  if (side !== 'sill' || panStrip(strips) === undefined) return 'inner edge of frame';
  switch (work.sealPosition?.value) {
    case 'at back dam':
    case 'inboard of back dam':
      return work.sealPosition.value;
    case 'outboard of back dam':
      return 'under unit';
    default:
      return 'inner edge of frame';
  }
}

/** A perimeter seal on one side; `undefined` where none runs. */
export function cutSeal(
  detail: Detail,
  opening: Opening,
  place: 'interior perimeter' | 'exterior perimeter',
  side: Side,
  strips: readonly Strip[],
): SealCut | undefined {
  const work = perimeterWork(detail, opening, place, side);
  if (work === undefined) return undefined;
  const { joint } = work;
  const widthMm = joint?.widthMm?.value ?? USUAL_JOINT_MM;
  return {
    work,
    place: sealPlace(work, place === 'interior perimeter', side, strips),
    widthMm,
    depthMm: joint?.depthMm?.value ?? widthMm / 2,
    ...(joint?.backerRodMm === undefined ? {} : { rodMm: joint.backerRodMm.value }),
    assumed: joint?.widthMm === undefined,
  };
}
