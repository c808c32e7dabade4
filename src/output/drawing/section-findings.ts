/** Marks of findings in a section, beside the part each one points at. */
import { sideOf, type NumberedFinding } from './findings.js';
import { markAt } from './elevation-findings.js';
import { bandBox, startOf } from './section-bands.js';
import type { SectionMap } from './section-map.js';
import { stripAnchor } from './section-strips.js';
import type { UnitPlaces } from './section-unit.js';
import type { Sheet } from './sheet.js';
import type { DrawingSubject } from './subject.js';
import type { Box, Point } from './svg.js';

const middle = (b: Box): Point => [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];

function anchorOf(map: SectionMap, places: UnitPlaces, finding: NumberedFinding): Point | undefined {
  const { section } = map;
  const { work, layer, opening } = finding.target;
  const side = finding.result.ruleId.startsWith('sill/') ? 'sill' : sideOf(finding);
  const place = side === 'left' || side === 'right' ? 'jamb' : side;
  if (section.place !== 'base' && place !== undefined && place !== section.place) return undefined;
  if (work !== undefined) {
    const strip = section.strips.find((s) => s.piece.work === work && s.piece.apply !== undefined);
    if (strip !== undefined) return stripAnchor(map, strip);
    if (section.interiorSeal?.work === work) return places.interiorSeal;
    if (section.exteriorSeal?.work === work) return places.exteriorSeal;
    if (section.unit?.set === work)
      return places.shims ?? (places.frame === undefined ? undefined : middle(places.frame));
  }
  const wanted = layer ?? (work?.action === 'apply' ? work.layer : undefined);
  if (wanted !== undefined) {
    const strip = section.strips.find((s) => s.piece.layer === wanted);
    if (strip !== undefined) return stripAnchor(map, strip);
    const band = section.bands.find((b) => b.layer === wanted);
    return band === undefined ? undefined : middle(bandBox(map, band, startOf(map, band), section.toMm));
  }
  return opening !== undefined && opening === section.opening && places.frame !== undefined
    ? middle(places.frame)
    : undefined;
}

/** Marks stand off what they point at, so that they do not hide it, mm. */
const ASIDE = 7;

/** @returns numbers of the findings that are marked */
export function markSectionFindings(
  sheet: Sheet,
  subject: DrawingSubject,
  map: SectionMap,
  places: UnitPlaces,
): Set<number> {
  const shown = new Set<number>();
  for (const finding of subject.findings) {
    const anchor = anchorOf(map, places, finding);
    if (anchor === undefined) continue;
    markAt(sheet, anchor, finding, map.box, map.alongAxis === 'y' ? [-ASIDE, 0] : [0, ASIDE]);
    shown.add(finding.number);
  }
  return shown;
}
