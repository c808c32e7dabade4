import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { formatQuantity } from '../../src/quantity/format.js';
import { askedInsulation, standing } from '../../src/vapor/class-three.js';
import { classTwoWithFoam, opensWhenDamp } from '../../src/vapor/class-two-foam.js';
import { usRToSi } from '../../src/vapor/classes.js';
import { CLASS_TWO_WET_CUP } from '../../src/vapor/data/condition-tables.js';
import { frameOf } from '../../src/vapor/frame.js';
import { interiorSide } from '../../src/vapor/interior-side.js';
import { jurisdiction } from '../../src/vapor/permitted.js';
import { fieldOfLayer } from '../../src/model/named-field.js';

const SOURCES: readonly Source[] = [
  { basis: 'code', citation: 'IRC 2021 Table R702.7(4)', provenance: 'from memory, confirm' },
  CLASS_TWO_WET_CUP,
];

/** With foam plastic outside, a class II retarder must open up when damp and the foam must be thick enough. */
export default defineRule({
  id: 'vapor/class-two-with-foam',
  title: 'Class II retarder with foam plastic outside',
  summary:
    'A class II interior retarder with foam-plastic continuous insulation outside goes with enough of it and opens up when damp.',
  level: 'warning',
  reads: [
    'wall.material',
    'wall.product',
    'wall.rValue',
    'wall.thickness',
    'wall.framing.depth',
    'product.permeance.wet',
    'product.responsive',
    'project.place.zone',
    'project.code',
  ],
  sources: SOURCES,
  caution:
    'The table is quoted from memory: confirm in the code before acting on it. The local code and licensed practice govern.',
  *review({ detail }) {
    const frame = frameOf(detail);
    const place = jurisdiction(detail.project);
    if (frame === undefined || place.kind !== 'known') return;
    const side = interiorSide(detail, frame);
    if (side.kind !== 'retarder' || side.retarder.vaporClass !== 'II') return;
    const condition = classTwoWithFoam(detail, frame, place);
    if (condition === undefined) return;
    const { retarder } = side;
    const { row, insulation } = condition;
    const where = `climate zone ${place.zoneText}, ${place.codeText}`;

    const subject = 'continuous insulation with a class II retarder';
    const asked = askedInsulation(row, frame);
    const result = standing(asked, insulation.knownM2KPerW);
    const missing = result === 'met' ? [] : insulation.unknown.map((i) => fieldOfLayer(i.layer, 'rValue'));
    if (missing.length === 0 && result === 'undecided' && asked.column === 'unknown')
      missing.push(fieldOfLayer(frame, 'framing.depth'));
    const like = insulation.layers.map((i) => i.stated).find((q) => q?.dimension === 'thermalResistance');
    const given = formatQuantity(insulation.knownM2KPerW, 'thermalResistance', like);
    const remark = insulation.assumptions.length === 0 ? '' : ` (${insulation.assumptions.join('; ')})`;
    const main = insulation.layers[0];
    const at = main?.stated?.at ?? main?.layer.at ?? retarder.at;
    const related = [{ message: `"${retarder.layer.id}" is class II (${retarder.words})`, at: retarder.at }];
    if (missing.length > 0) {
      yield {
        kind: 'open',
        at: insulation.unknown[0]?.layer.at ?? at,
        subject,
        sources: [row.source],
        provided: `${given}${remark}`,
        missing,
        related,
        message: `Whether the foam outside goes with the class II retarder "${retarder.layer.id}" in ${where} cannot be told; state ${missing.join(', ')}.`,
      };
    } else if (result === 'undecided') {
      yield {
        kind: 'review',
        at,
        subject,
        sources: [row.source],
        provided: `${given}${remark}`,
        related,
        message: `The framing "${frame.id}" is deeper than 2x6, for which ${row.source.citation} has no value; continuous insulation of ${given} meets the 2x6 value of R-${row.r2x6}.`,
      };
    } else {
      const needed = result === 'short' ? asked.leastUsR : (asked.mostUsR ?? asked.leastUsR);
      const outcome = againstLimit({
        subject,
        at,
        related,
        dimension: 'thermalResistance',
        comparison: 'at least',
        like,
        provided: insulation.knownM2KPerW,
        limit: { value: usRToSi(needed), text: `R-${needed}`, source: row.source, others: [] },
        sentence: () =>
          `With the class II retarder "${retarder.layer.id}" in ${where}, continuous insulation with foam plastic is ${given}${remark}`,
        correct: (required) =>
          `Make the continuous insulation ${required}, or use a class III retarder where its conditions are met.`,
        missing: [],
      });
      yield outcome.kind === 'fail'
        ? { ...outcome, message: `${outcome.message} The table is quoted from memory: confirm in the code.` }
        : outcome;
    }

    const wet = opensWhenDamp(retarder);
    const wetSubject = 'class II retarder beside foam plastic';
    const required = 'more than 1 perm in the wet cup (ASTM E96 procedure B)';
    const provided =
      retarder.wetNgPerPaSM2 === undefined
        ? retarder.words
        : formatQuantity(retarder.wetNgPerPaSM2, 'permeance', retarder.layer.product?.permeanceWet);
    if (wet === undefined) {
      yield {
        kind: 'open',
        at: retarder.at,
        subject: wetSubject,
        required,
        sources: [CLASS_TWO_WET_CUP],
        missing: ['product.permeance.wet'],
        message: `Nothing states the wet-cup permeance of the class II retarder "${retarder.layer.id}", which must be more than 1 perm beside foam plastic outside; name a product that declares product.permeance.wet.`,
      };
    } else {
      yield {
        kind: wet ? 'pass' : 'fail',
        at: retarder.at,
        subject: wetSubject,
        required,
        provided,
        sources: [CLASS_TWO_WET_CUP],
        message: wet
          ? `The class II retarder "${retarder.layer.id}" opens up when damp (${provided}).`
          : `The class II retarder "${retarder.layer.id}" has a permeance of ${provided} in the wet cup; beside foam plastic outside more than 1 perm is required (${CLASS_TWO_WET_CUP.citation}).`,
        ...(wet ? {} : { correct: 'Use a responsive retarder that passes more than 1 perm in the wet cup.' }),
      };
    }
  },
});
