import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { systemOf } from '../../src/model/unit-system.js';
import type { Detail } from '../../src/model/types.js';
import { askedOfInsulation } from '../../src/moisture/wall/asked-of-insulation.js';
import { exposedMasonry } from '../../src/moisture/wall/exposed-masonry.js';
import { wholeYearOf } from '../../src/moisture/wall/told.js';
import { resistanceText } from '../../src/moisture/words.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { askedInsulation, conditionsAt, standing } from '../../src/vapor/class-three.js';
import { usRToSi } from '../../src/vapor/classes.js';
import { frameOf } from '../../src/vapor/frame.js';
import { continuousInsulation } from '../../src/vapor/insulation.js';
import { interiorSide } from '../../src/vapor/interior-side.js';
import { jurisdiction, permitted, type KnownPlace } from '../../src/vapor/permitted.js';
import { sheathingOf, venting } from '../../src/vapor/venting.js';
import { fieldOfLayer } from '../../src/model/named-field.js';

const SOURCES: readonly Source[] = [
  { basis: 'code', citation: 'IRC 2021 Table R702.7(3)', provenance: 'seen at second hand' },
  { basis: 'code', citation: 'IBC 2021 Table 1404.3(3)', provenance: 'seen at second hand' },
];

/** Paint alone is enough in a cold zone only when the wall dries outward or its cavity is kept warm. */
export default defineRule({
  id: 'vapor/class-three-conditions',
  title: 'Conditions for a class III retarder',
  summary:
    'In cold and marine zones a class III interior retarder goes with vented cladding over the right sheathing or with enough continuous insulation.',
  level: 'error',
  reads: [
    'wall.finish',
    'wall.material',
    'wall.rValue',
    'wall.thickness',
    'wall.vented',
    'wall.framing.depth',
    'project.place.zone',
    'project.code',
  ],
  sources: SOURCES,
  caution: 'An aid to review: the local code and the judgment of a licensed designer govern vapor control.',
  *review({ detail }) {
    const frame = frameOf(detail);
    const place = jurisdiction(detail.project);
    if (frame === undefined || place.kind !== 'known') return;
    const side = interiorSide(detail, frame);
    if (
      side.kind !== 'retarder' ||
      side.retarder.vaporClass !== 'III' ||
      permitted(place, 'III').permission !== 'conditions'
    )
      return;
    const row = conditionsAt(place);
    if (row === undefined) return;
    const { retarder } = side;
    const subject = 'class III interior vapor retarder';
    const sources: readonly Source[] = [row.source];
    const where = `climate zone ${place.zoneText}, ${place.codeText}`;
    const confirm =
      row.source.provenance === 'seen'
        ? ''
        : ` The table is quoted ${row.source.provenance === 'from memory, confirm' ? 'from memory' : 'at second hand'}${row.disputed === undefined ? '' : `, and ${row.disputed}`}: confirm in the code.`;

    const vent = venting(detail, frame);
    const sheathing = sheathingOf(detail, frame);
    if (vent.kind === 'vented' && sheathing.kind === 'known' && row.ventedOver.includes(sheathing.sheathing)) {
      yield {
        kind: 'pass',
        at: retarder.at,
        subject,
        sources,
        required: `vented cladding over ${row.ventedOver.join(', ')}`,
        provided: `${vent.words}, over ${sheathing.sheathing} sheathing`,
        message: `The class III retarder "${retarder.layer.id}" goes with vented cladding over ${sheathing.sheathing} sheathing in ${where} (${vent.words}).`,
      };
      return;
    }

    const insulation = continuousInsulation(detail, frame);
    const asked = askedInsulation(row, frame);
    const result = standing(asked, insulation.knownM2KPerW);
    const like = insulation.layers.map((i) => i.stated).find((q) => q?.dimension === 'thermalResistance');
    const given = formatQuantity(insulation.knownM2KPerW, 'thermalResistance', like);
    const remark = insulation.assumptions.length === 0 ? '' : ` (${insulation.assumptions.join('; ')})`;

    if (result !== 'met') {
      const missing = insulation.unknown.map((i) => fieldOfLayer(i.layer, 'rValue'));
      const words = insulation.unknown.map(
        (i) => `"${i.layer.id}" states neither an R-value nor a known material and thickness`,
      );
      // The vented branch is open too, unless the zone has none or foam stands in its way.
      const ventedCan =
        row.ventedOver.length > 0 &&
        sheathing.kind !== 'covered' &&
        (sheathing.kind === 'unknown' || row.ventedOver.includes(sheathing.sheathing));
      if (ventedCan && vent.kind === 'unknown') {
        missing.push(...vent.missing);
        words.push(vent.words);
      } else if (ventedCan && vent.kind === 'vented' && sheathing.kind === 'unknown') {
        missing.push(...sheathing.missing);
        words.push('the sheathing under the vented cladding is not named');
      }
      if (missing.length === 0 && result === 'undecided' && asked.column === 'unknown') {
        missing.push(fieldOfLayer(frame, 'framing.depth'));
        words.push(`the depth of the framing "${frame.id}" is not stated`);
      }
      if (missing.length > 0) {
        yield {
          kind: 'open',
          at: insulation.unknown[0]?.layer.at ?? retarder.at,
          subject,
          sources,
          provided: `continuous insulation ${given}${remark}`,
          missing: [...new Set(missing)],
          message: `Whether the wall meets the conditions for a class III retarder in ${where} cannot be told: ${words.join('; ')}. State ${[...new Set(missing)].join(', ')}.`,
        };
        return;
      }
      if (result === 'undecided') {
        yield {
          kind: 'review',
          at: retarder.at,
          subject,
          sources,
          provided: `continuous insulation ${given}${remark}`,
          message: `The framing "${frame.id}" is deeper than 2x6, for which ${row.source.citation} has no value; continuous insulation of ${given} meets the 2x6 value of R-${row.r2x6}, so have the designer show that the deeper cavity stays dry.`,
        };
        return;
      }
    }
    const needed =
      asked.column === 'unknown' && result === 'short' ? asked.leastUsR : (asked.mostUsR ?? asked.leastUsR);
    const main = insulation.layers[0];
    // A wall of masonry, or one whose sheathing lies under foam, has no cladding to vent over a sheathing.
    const canBeVented =
      row.ventedOver.length > 0 &&
      sheathing.kind !== 'covered' &&
      detail.layers.some((layer) => layer.family === 'sheathing' && layer.index > frame.index) &&
      exposedMasonry(detail).kind === 'drained';
    const instead =
      vent.kind !== 'vented'
        ? vent.words
        : sheathing.kind === 'covered'
          ? `"${sheathing.by.id}" stands between the sheathing and the vented cladding`
          : 'the vented cladding does not stand over a sheathing of the table';
    const outcome = againstLimit({
      subject,
      dimension: 'thermalResistance',
      comparison: 'at least',
      like,
      provided: insulation.knownM2KPerW,
      at: main?.stated?.at ?? main?.layer.at ?? retarder.at,
      limit: { value: usRToSi(needed), text: `R-${needed}`, source: row.source, others: [] },
      sentence: () =>
        `With the class III retarder "${retarder.layer.id}" in ${where}, continuous insulation outside the ${asked.column === 'deeper' ? 'framing, which is deeper than 2x6,' : asked.column === 'unknown' ? 'framing' : `${asked.column} framing`} is ${given}${remark}${result === 'met' ? '' : ` and ${instead}`}`,
      correct: (required) =>
        `Add continuous insulation to ${stricterOf(detail, required, usRToSi(needed), insulation.knownM2KPerW)}${canBeVented ? `, vent the cladding over ${row.ventedOver.join(' or ')} sheathing` : ''}, or use ${tighterInside(place)} inside.`,
      missing: [],
      related: [{ message: `"${retarder.layer.id}" is class III (${retarder.words})`, at: retarder.at }],
    });
    // What rests on a generic R-value, or on a table that was not read itself, is a warning at most.
    const isSure = insulation.assumptions.length === 0 && row.source.provenance === 'seen';
    yield outcome.kind === 'fail'
      ? { ...outcome, message: `${outcome.message}${confirm}`, ...(isSure ? {} : { level: 'warning' as const }) }
      : outcome;
  },
});

/** What the table asks, or what the followed year asks where that is more; `moisture/condensation` tells of it. */
function stricterOf(detail: Detail, required: string, neededM2KPerW: number, knownM2KPerW: number): string {
  const year = wholeYearOf(detail);
  if (year?.judgement.kind !== 'refused') return required;
  const { byYear } = askedOfInsulation(detail, year, systemOf(detail));
  if (byYear.kind !== 'found') return required;
  const now = byYear.spot.changes === undefined ? 0 : (year.read.walls[0].layers[byYear.spot.index]?.rM2KW ?? 0);
  const all = knownM2KPerW - now + byYear.value;
  return all <= neededM2KPerW * (1 + 1e-6)
    ? required
    : `at least ${resistanceText(all, systemOf(detail))}, which keeps the followed year dry (${required} by the table)`;
}

/** The tighter classes that may stand inside at the place. */
function tighterInside(place: KnownPlace): string {
  const classes = (['II', 'I'] as const).filter((c) => permitted(place, c).permission === 'yes');
  return classes.length === 0 ? 'a responsive retarder' : `a ${classes.map((c) => `class ${c}`).join(' or ')} retarder`;
}
