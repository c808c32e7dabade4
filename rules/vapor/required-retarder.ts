import { againstLimit } from '../../src/engine/against-limit.js';
import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { classOfPermeance, permToNg } from '../../src/vapor/classes.js';
import { NBC_BARRIER } from '../../src/vapor/data/permitted-tables.js';
import { frameOf } from '../../src/vapor/frame.js';
import { interiorSide } from '../../src/vapor/interior-side.js';
import { materialNamed, permeancePermAt } from '../../src/vapor/materials.js';
import { jurisdiction, permitted, permittedWords } from '../../src/vapor/permitted.js';

const SOURCES: readonly Source[] = [
  {
    basis: 'code',
    citation: 'IRC 2009 R601.3',
    provenance: 'seen at second hand',
    url: 'https://www.greenbuildingadvisor.com/blogs/dept/code-green/vapor-retarders',
  },
  NBC_BARRIER.source,
];

/** A framed wall in a cold zone has some interior vapor retarder. */
export default defineRule({
  id: 'vapor/required-retarder',
  title: 'Interior vapor retarder in cold zones',
  summary: 'A framed wall in a cold or marine zone has an interior vapor retarder.',
  level: 'error',
  reads: [
    'wall.material',
    'wall.product',
    'wall.finish',
    'wall.permeance',
    'product.permeance',
    'project.place.zone',
    'project.code',
  ],
  sources: SOURCES,
  caution: 'An aid to review: the local code and the judgment of a licensed designer govern vapor control.',
  *review({ detail, limit }) {
    const frame = frameOf(detail);
    if (frame === undefined) return;
    const side = interiorSide(detail, frame);
    const place = jurisdiction(detail.project);
    const subject = 'interior vapor retarder';
    const foamPermeance = frame.family === 'spray foam' ? foamNgPerPaSM2(frame) : undefined;

    if (place.kind === 'Canada') {
      const sources: readonly Source[] = [NBC_BARRIER.source];
      const required = `at most ${NBC_BARRIER.text}`;
      const found = side.kind === 'retarder' ? side.retarder : undefined;
      // Classes I and II end at 1 perm, 57 ng/(Pa s m2): within the limit without a number of their own.
      if (found !== undefined && found.vaporClass !== 'III' && (found.ngPerPaSM2 ?? 0) <= NBC_BARRIER.mostNgPerPaSM2) {
        yield {
          kind: 'pass',
          at: found.at,
          subject: 'vapor barrier',
          required,
          provided: found.words,
          sources,
          message: `The vapor barrier "${found.layer.id}" is ${found.words}, within ${NBC_BARRIER.text}.`,
        };
      } else if (foamPermeance !== undefined && foamPermeance <= NBC_BARRIER.mostNgPerPaSM2) {
        yield {
          kind: 'review',
          at: frame.at,
          subject: 'vapor barrier',
          required,
          sources,
          message: `The spray foam "${frame.id}" is itself within ${NBC_BARRIER.text}; whether it serves as the vapor barrier of the wall is for the reviewer.`,
        };
      } else if (found?.ngPerPaSM2 !== undefined && !found.generic) {
        yield againstLimit({
          subject: 'vapor barrier',
          at: found.at,
          dimension: 'permeance',
          provided: found.ngPerPaSM2,
          like: found.layer.permeance ?? found.layer.product?.permeanceDry,
          comparison: 'at most',
          limit: limit({
            property: 'permeance',
            comparison: 'at most',
            product: found.layer.product,
            offered: [{ value: NBC_BARRIER.mostNgPerPaSM2, text: NBC_BARRIER.text, source: NBC_BARRIER.source }],
          }),
          sentence: (provided) =>
            `The interior layer of least permeance "${found.layer.id}" has a permeance of ${provided}`,
          correct: (most) => `Put a vapor barrier of ${most} on the warm side.`,
          missing: [],
        });
      } else if (side.kind === 'unknown') {
        yield {
          kind: 'open',
          at: side.at,
          subject: 'vapor barrier',
          required,
          sources,
          missing: side.missing,
          message: `The vapor barrier cannot be told: ${side.reason}. State ${side.missing.join(', ')}.`,
        };
      } else {
        const layer = side.kind === 'none' ? side.layer : side.retarder.layer;
        yield {
          kind: 'fail',
          at: found?.at ?? layer.at,
          subject: 'vapor barrier',
          required,
          provided: found?.words ?? 'none',
          sources,
          message: `No interior layer of the framed wall is a vapor barrier of ${required} (${NBC_BARRIER.source.citation}); the one of least permeance is "${layer.id}".`,
          correct: `Put a vapor barrier of ${NBC_BARRIER.text} or less on the warm side.`,
        };
      }
      return;
    }

    // Unknown classes are reported by vapor/interior-retarder-class, class III by vapor/class-three-conditions.
    if (side.kind === 'unknown') return;
    if (side.kind === 'none' && place.kind === 'missing') {
      yield {
        kind: 'open',
        at: side.layer.at,
        subject,
        sources: SOURCES,
        missing: place.missing,
        message: `The wall has no interior vapor retarder, and whether it needs one cannot be told: ${place.reason}. State ${place.missing.join(' and ')}.`,
      };
      return;
    }
    if (side.kind === 'none' && place.kind === 'not held') {
      yield {
        kind: 'review',
        at: side.layer.at,
        subject,
        message: `The wall has no interior vapor retarder; look up in ${place.codeText}, whose tables are not held here, whether it needs one.`,
      };
      return;
    }
    if (place.kind !== 'known') return;
    const sources: readonly Source[] = [place.tables.required.source];
    const required = permittedWords(place);
    const where = `climate zone ${place.zoneText}, ${place.codeText}`;
    if (!place.tables.required.zones.includes(place.zone)) {
      if (side.kind !== 'none') return;
      // Where even class III stands under conditions, none at all is not plainly allowed.
      const free = permitted(place, 'III').permission === 'yes';
      yield free
        ? {
            kind: 'pass',
            at: side.layer.at,
            subject,
            required: 'none',
            provided: 'none',
            sources,
            message: `The wall has no interior vapor retarder, and ${where} asks for none.`,
          }
        : {
            kind: 'review',
            at: side.layer.at,
            subject,
            required,
            provided: 'none',
            sources,
            message: `The wall has no interior vapor retarder, and ${where} permits ${required}; whether none at all may stand is for the code official.`,
          };
      return;
    }
    if (side.kind === 'retarder') {
      if (side.retarder.vaporClass === 'III') return;
      yield {
        kind: 'pass',
        at: side.retarder.at,
        subject,
        required,
        provided: `class ${side.retarder.vaporClass} (${side.retarder.words})`,
        sources,
        message: `The wall has the interior vapor retarder that ${where} asks for: "${side.retarder.layer.id}", class ${side.retarder.vaporClass}.`,
      };
      return;
    }
    if (foamPermeance !== undefined && ['I', 'II'].includes(classOfPermeance(foamPermeance))) {
      yield {
        kind: 'review',
        at: frame.at,
        subject,
        required,
        sources,
        message: `No interior layer is a vapor retarder, but the spray foam "${frame.id}" is itself class ${classOfPermeance(foamPermeance)}; whether it serves as the retarder that ${where} asks for is for the code official.`,
      };
      return;
    }
    const confirm =
      place.tables.required.source.provenance === 'from memory, confirm'
        ? ' The requirement is quoted from memory: confirm in the code.'
        : '';
    yield {
      kind: 'fail',
      at: side.layer.at,
      subject,
      required,
      provided: 'none',
      sources,
      message: `The framed wall has no interior vapor retarder; ${where} asks for ${required} (${place.tables.required.source.citation}).${confirm}`,
      correct:
        'Put a class I, class II or responsive retarder on the room side, or paint the board and meet the conditions for class III.',
    };
  },
});

/** Dry permeance of spray foam in the cavity, ng/(Pa s m2): declared, else the most open generic value. */
function foamNgPerPaSM2(foam: NonNullable<ReturnType<typeof frameOf>>): number | undefined {
  const declared = foam.permeance ?? foam.product?.permeanceDry;
  if (declared !== undefined) return declared.upper ?? declared.value;
  const material = materialNamed(foam.material?.value ?? '');
  const spread = material === undefined ? undefined : permeancePermAt(material, foam.thicknessMm?.value);
  return spread === undefined ? undefined : permToNg(spread[1]);
}
