import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { RESPONSIVE_ALLOWED } from '../../src/vapor/data/permitted-tables.js';
import { frameOf } from '../../src/vapor/frame.js';
import { interiorSide } from '../../src/vapor/interior-side.js';
import { heldEditions, jurisdiction, permitted, permittedWords } from '../../src/vapor/permitted.js';

const SOURCES: readonly Source[] = [
  { basis: 'code', citation: 'IBC 2021 Table 1404.3(2)', provenance: 'seen at second hand' },
  {
    basis: 'code',
    citation: 'IRC 2021 Table R702.7(2)',
    provenance: 'seen',
    url: 'https://basc.pnnl.gov/building-assemblies/1a',
  },
];

/** The class of the interior retarder against the cell of its zone and edition. */
export default defineRule({
  id: 'vapor/interior-retarder-class',
  title: 'Interior vapor retarder class',
  summary:
    'The vapor retarder on the room side of a framed wall is of a class that the code permits in the climate zone.',
  level: 'error',
  reads: [
    'wall.material',
    'wall.product',
    'wall.finish',
    'wall.permeance',
    'product.permeance',
    'product.responsive',
    'project.place.zone',
    'project.code',
  ],
  sources: SOURCES,
  caution: 'An aid to review: the local code and the judgment of a licensed designer govern vapor control.',
  *review({ detail }) {
    const frame = frameOf(detail);
    const place = jurisdiction(detail.project);
    if (frame === undefined || place.kind === 'Canada') return;
    const side = interiorSide(detail, frame);
    // No retarder at all is the business of vapor/required-retarder.
    if (side.kind === 'none') return;
    const subject = 'interior vapor retarder';
    const missingPlace = place.kind === 'missing' ? place : undefined;
    if (side.kind === 'unknown') {
      yield {
        kind: 'open',
        at: side.at,
        subject,
        sources: SOURCES,
        missing: [...side.missing, ...(missingPlace?.missing ?? [])],
        message: `The class of the interior vapor retarder cannot be told: ${side.reason}${missingPlace === undefined ? '' : `; ${missingPlace.reason}`}. State ${side.missing.join(', ')}${missingPlace === undefined ? '' : `, ${missingPlace.missing.join(', ')}`}.`,
      };
      return;
    }
    const { retarder } = side;
    const { at } = retarder;
    const name = `"${retarder.layer.id}"`;
    const provided = `class ${retarder.vaporClass} (${retarder.words})`;
    if (place.kind === 'missing') {
      yield {
        kind: 'open',
        at,
        subject,
        provided,
        sources: SOURCES,
        missing: place.missing,
        message: `The interior vapor retarder ${name} is ${provided}, but whether it is permitted cannot be told: ${place.reason}. State ${place.missing.join(' and ')}.`,
        ...(detail.project === undefined
          ? {}
          : { related: [{ message: 'the project of this detail', at: detail.project.at }] }),
      };
      return;
    }
    if (place.kind === 'not held') {
      yield {
        kind: 'review',
        at,
        subject,
        provided,
        message: `The interior vapor retarder ${name} is ${provided}; look it up in ${place.codeText}, whose tables are not held here (held: ${heldEditions()}).`,
      };
      return;
    }
    const where = `climate zone ${place.zoneText}, ${place.codeText}`;
    if (retarder.responsive && retarder.vaporClass !== 'III') {
      yield {
        kind: 'pass',
        at,
        subject,
        provided,
        sources: [RESPONSIVE_ALLOWED],
        required: 'a permitted class, or a responsive retarder',
        message: `The interior vapor retarder ${name} is responsive (${retarder.words}), which may stand inside in every zone.`,
      };
      return;
    }
    const cell = permitted(place, retarder.vaporClass);
    if (cell.permission === 'conditions') return;
    const required = permittedWords(place);
    if (cell.permission === 'yes') {
      yield {
        kind: 'pass',
        at,
        subject,
        required,
        provided,
        sources: [cell.source],
        message: `The interior vapor retarder ${name} is ${provided}, which is permitted in ${where} (${cell.source.citation}).`,
      };
      return;
    }
    const confirm =
      cell.source.provenance === 'from memory, confirm' ? ' The table is quoted from memory: confirm in the code.' : '';
    yield {
      kind: 'fail',
      at,
      subject,
      required,
      provided,
      sources: [cell.source],
      message: `The interior vapor retarder ${name} is ${provided}; ${where} permits ${required} only (${cell.source.citation}).${confirm}`,
      correct: `Use ${required}, or a responsive retarder that passes more than 1 perm in the wet cup.`,
    };
  },
});
