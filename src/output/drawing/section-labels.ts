/** Words of a section: every layer, piece and part by name, with its number in the order of work. */
import { sealAgainstDam } from '../../geometry/section/laps.js';
import type { Strip } from '../../geometry/section/types.js';
import type { Apply } from '../../model/types.js';
import type { Label } from './labels.js';
import { bandBox, startOf } from './section-bands.js';
import type { SectionMap } from './section-map.js';
import { ANGLE_MM, stripAnchor } from './section-strips.js';
import type { UnitPlaces } from './section-unit.js';
import { filmText, materialText, workOfLayer, type DrawingSubject } from './subject.js';
import type { Point } from './svg.js';

export interface SectionLabels {
  readonly left: Label[];
  readonly right: Label[];
}

/** Distance between the anchors of neighboring layers, mm on paper: the height of a label. */
const STEP = 7.4;

function bandLabels(subject: DrawingSubject, map: SectionMap): { label: Label; outside: boolean }[] {
  const { section } = map;
  const shown = section.bands.filter(
    (b) => b.outerMm > b.innerMm || !section.strips.some((s) => s.piece.layer === b.layer),
  );
  const inner = shown.filter((b) => b.outerMm <= 0);
  const outer = shown.filter((b) => b.outerMm > 0).reverse();
  const place = (list: typeof shown): { label: Label; outside: boolean }[] =>
    list
      .filter((b) => b.layer.family !== 'paint')
      .map((band, i) => {
        const { layer, assumed } = band;
        const box = bandBox(map, band, startOf(map, band), section.toMm);
        const isPlan = map.alongAxis === 'x';
        // Outermost layers are told nearest to the far end, so that leaders do not cross.
        const back = 3.5 + i * (isPlan ? 0 : STEP);
        const farIsLow = section.place === 'sill';
        const x = isPlan ? (section.side === 'right jamb' ? box.x1 - 3.5 : box.x0 + 3.5) : (box.x0 + box.x1) / 2;
        const y = isPlan ? (box.y0 + box.y1) / 2 : farIsLow ? box.y1 - back : box.y0 + back;
        const thickness = assumed ? 'thickness not given' : layer.thicknessMm?.text;
        const finish = layer.finish === undefined ? [] : [`finish: ${layer.finish.value}`];
        const work = workOfLayer(subject.detail, layer);
        return {
          outside: band.outerMm > 0,
          label: {
            anchor: [x, y],
            lines: [[materialText(layer), thickness].filter((t) => t !== undefined).join(', '), ...finish],
            ...(work === undefined ? {} : { step: work.step }),
          },
        };
      });
  return [...place(inner), ...place(outer)];
}

/** `weeps: open head joints, 24 in apart` */
function weepsText({ weeps }: Apply): string {
  if (weeps === undefined) return '';
  if (weeps.count?.value === 0) return 'no weeps';
  const said = [weeps.type?.value, weeps.spacingMm === undefined ? undefined : `${weeps.spacingMm.text} apart`];
  return `weeps${said.some((s) => s !== undefined) ? `: ${said.filter((s) => s !== undefined).join(', ')}` : ''}`;
}

function stripLines(strip: Strip): string[] {
  const { piece, slope, backDamMm } = strip;
  const { apply, work } = piece;
  if (apply === undefined) {
    const bedding = work.action === 'set' ? work.bedding : {};
    const said = (['head', 'jambs', 'sill'] as const).flatMap((side) => {
      const state = bedding[side];
      return state === undefined ? [] : [`${side} ${state.value}`];
    });
    return [`flange of the unit`, ...(said.length === 0 ? [] : [`bedding: ${said.join(', ')}`])];
  }
  const film = filmText(apply.layer ?? apply);
  const what = apply.product?.name ?? apply.layer?.material?.value ?? apply.productId?.value ?? apply.family;
  const shape = [
    slope !== 0 ? `slope ${apply.slope?.text ?? ''}` : '',
    backDamMm === undefined ? '' : `back dam ${apply.backDamMm?.text ?? ''}`,
    strip.endDamMm === undefined ? '' : `end dams ${apply.endDamsMm?.text ?? ''}`,
    strip.projectsMm === undefined ? '' : `projects ${apply.projectsMm?.text ?? ''}`,
    weepsText(apply),
  ].filter(Boolean);
  return [`${work.id}: ${what}${film === '' ? '' : `, ${film}`}`, ...(shape.length === 0 ? [] : [shape.join(', ')])];
}

function sealLines(map: SectionMap): string[] {
  const seal = map.section.interiorSeal;
  if (seal === undefined) return [];
  const { work } = seal;
  const lines = [`${work.id}: ${work.product?.name ?? work.family}`];
  const meeting = map.section.place === 'sill' ? sealAgainstDam(map.section) : undefined;
  if (work.sealPosition !== undefined && map.section.place === 'sill') lines.push(work.sealPosition.value);
  else if (meeting?.lands !== undefined)
    lines.push(meeting.lands === 'at' ? 'lands on the back dam' : `${meeting.lands} of the back dam`);
  if (seal.assumed) lines.push('joint size not given');
  return lines;
}

function partLabels(map: SectionMap, places: UnitPlaces): Label[] {
  const { section } = map;
  const { unit, interiorSeal, exteriorSeal } = section;
  const labels: Label[] = [];
  const add = (anchor: Point | undefined, lines: string[], step?: number): void => {
    if (anchor !== undefined) labels.push({ anchor, lines, ...(step === undefined ? {} : { step }) });
  };
  if (unit !== undefined && places.frame !== undefined) {
    const { frame } = places;
    const mounting = unit.opening.unit?.mounting?.value;
    const guess = [
      unit.assumed.frameDepth ? 'frame depth not given' : '',
      unit.assumed.position ? 'position in the depth not given' : '',
    ].filter(Boolean);
    add(
      [frame.x1 - 1.2, (frame.y0 + frame.y1) / 2],
      [
        `frame of ${unit.opening.id}${mounting === undefined ? '' : `, ${mounting === 'flange' ? 'flanged' : mounting}`}`,
        ...guess,
      ],
      unit.set?.step,
    );
  }
  const shims = unit?.set?.shims;
  if (shims !== undefined) {
    const words = [
      shims.material?.value,
      shims.gapMm === undefined ? undefined : `gap ${shims.gapMm.text}`,
      shims.continuous?.value === true ? 'continuous' : undefined,
    ];
    add(places.shims, [
      `shims${words.some((w) => w !== undefined) ? ': ' : ''}${words.filter((w) => w !== undefined).join(', ')}`,
    ]);
  }
  add(places.interiorSeal, sealLines(map), interiorSeal?.work.step);
  if (places.rod !== undefined) add(places.rod, [`backer rod ${interiorSeal?.work.joint?.backerRodMm?.text ?? ''}`]);
  if (exteriorSeal !== undefined) {
    const { weeps: made } = exteriorSeal.work;
    const weeps = made === undefined ? [] : [made.count?.value === 0 ? 'no weeps' : 'with weeps'];
    add(
      places.exteriorSeal,
      [`${exteriorSeal.work.id}: ${exteriorSeal.work.product?.name ?? exteriorSeal.work.family}`, ...weeps],
      exteriorSeal.work.step,
    );
  }
  const lintel = section.place === 'head' ? section.opening?.lintel : undefined;
  if (lintel !== undefined && section.veneerFoot?.hasAngle === true)
    add(map.point(-ANGLE_MM / 2, map.drawnDepth(section.veneerFoot.band.innerMm + 30)), [
      `lintel: ${lintel.material.value}`,
    ]);
  const { foundation } = section;
  if (foundation !== undefined) {
    add(
      map.point(
        (section.fromMm + Math.min(foundation.claddingFootMm, foundation.gradeMm ?? 0)) / 2,
        Math.min(0, ...section.bands.map((b) => b.innerMm)) / 2,
      ),
      ['foundation'],
    );
    const { gradeMm } = foundation;
    if (gradeMm !== undefined) add([map.box.x0 + 4, map.point(gradeMm, 0)[1] + 0.2], ['finished grade']);
  }
  return labels;
}

/**
 * All labels, sorted to the two sides of the drawing.
 *
 * @param more a label that another part of the drawing asks for
 */
export function sectionLabels(
  subject: DrawingSubject,
  map: SectionMap,
  places: UnitPlaces,
  more: Label | undefined,
): SectionLabels {
  const { section } = map;
  const isPlan = map.alongAxis === 'x';
  const bands = bandLabels(subject, map);
  const strips = section.strips.map((strip) => {
    const [x, y] = stripAnchor(map, strip);
    return {
      label: { anchor: [x, y] as Point, lines: stripLines(strip), step: strip.piece.work.step },
      onFace: strip.runs.some((r) => r.on === 'face'),
    };
  });
  const parts = [...partLabels(map, places), ...(more === undefined ? [] : [more])];
  if (isPlan) {
    const farLeft = section.side !== 'right jamb';
    const far = bands.map((b) => b.label);
    const near = [...strips.map((s) => s.label), ...parts];
    return farLeft ? { left: far, right: near } : { left: near, right: far };
  }
  const face = map.point(0, map.drawnDepth(1))[0];
  const isOutside = (l: Label): boolean => l.anchor === places.exteriorSeal || l.anchor[0] <= face;
  return {
    left: [
      ...bands.filter((b) => b.outside).map((b) => b.label),
      ...strips.filter((s) => s.onFace).map((s) => s.label),
      ...parts.filter(isOutside),
    ],
    right: [
      ...bands.filter((b) => !b.outside).map((b) => b.label),
      ...strips.filter((s) => !s.onFace).map((s) => s.label),
      ...parts.filter((l) => !isOutside(l)),
    ],
  };
}
