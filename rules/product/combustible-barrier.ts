import { defineRule } from '../../src/engine/rule.js';
import type { Source } from '../../src/engine/result.js';
import { shedsWater } from '../../src/model/families.js';
import type { Layer, Project } from '../../src/model/types.js';

const TRIGGER: Source = {
  basis: 'code',
  citation:
    'IBC 2012 and 2015, 1403.5; IBC 2018 and 2021, 1402.5: combustible water-resistive barrier, types I to IV, more than 40 ft above grade (renumbered in 2024, confirm)',
  provenance: 'seen at second hand',
};
const EXCEPTIONS: Source = {
  basis: 'code',
  citation: 'exceptions for a barrier that is the only combustible part, since IBC 2015',
  provenance: 'seen at second hand',
  url: 'https://www.bdcnetwork.com/IBCbarriersOK',
};

const LIMIT_FT = 40;
const MM_PER_FT = 304.8;

/** True for types I to IV, false for type V; `undefined` when the project does not say. */
function isNonCombustibleType(project: Project): boolean | undefined {
  const type = project.constructionType?.value;
  return type === undefined ? undefined : !/^V(?!I)/.test(type);
}

/** Layers that are the water-resistive barrier and of a product. */
function barriers(layers: readonly Layer[]): Layer[] {
  return layers.filter(
    (l) => l.product !== undefined && (shedsWater(l.family) || l.controls.some((c) => c.value === 'water')),
  );
}

const namesTest = (layer: Layer): boolean =>
  [...layer.standards, ...(layer.product?.standards ?? [])].some((s) => /\bNFPA\s*285\b/i.test(s.value));

/** A combustible barrier high on a building of types I to IV has fire evidence. */
export default defineRule({
  id: 'product/combustible-barrier',
  title: 'Combustibility of a barrier high on the wall',
  summary:
    'Where the building code asks for it, a combustible water-resistive barrier names the fire test of the wall assembly.',
  level: 'warning',
  reads: [
    'product.combustible',
    'product.standards',
    'wall.standards',
    'project.constructionType',
    'project.height',
    'project.code',
  ],
  sources: [TRIGGER, EXCEPTIONS],
  caution:
    'Fire can climb over the outside of a wall. Whether an assembly is accepted is for the fire engineer and the building official; a test holds only for the assembly that was tested.',
  *review({ detail }) {
    const { project } = detail;
    // Another code has its own rule.
    if (project?.code?.title !== 'IBC') return;
    for (const layer of barriers(detail.layers)) {
      const product = layer.product;
      if (product === undefined) continue;
      const { combustible } = product;
      const base = {
        at: layer.productId?.at ?? layer.at,
        subject: `fire evidence for ${layer.id}`,
        sources: [TRIGGER, EXCEPTIONS],
      };
      const required = 'NFPA 285 for the assembly, or an exception of the code';
      if (combustible?.value === false) {
        yield { kind: 'pass', message: `"${product.id}" of the layer "${layer.id}" is not combustible.`, ...base };
        continue;
      }
      const type = isNonCombustibleType(project);
      const high = project.heightMm === undefined ? undefined : project.heightMm.value > LIMIT_FT * MM_PER_FT + 0.5;
      if (type === false || high === false) {
        const why =
          type === false
            ? `the building is of type ${project.constructionType?.value ?? ''}`
            : `the building is ${project.heightMm?.text ?? ''} high, not more than ${LIMIT_FT} ft`;
        yield {
          kind: 'pass',
          message: `"${product.id}" of the layer "${layer.id}" needs no fire test of the assembly for its own sake: ${why}.`,
          ...base,
        };
        continue;
      }
      const missing = [
        ...(type === undefined ? ['project.constructionType'] : []),
        ...(high === undefined ? ['project.height'] : []),
        ...(combustible === undefined ? ['product.combustible'] : []),
      ];
      // What nobody calls combustible is asked about only on a building where it matters.
      if (combustible === undefined && (type === undefined || high === undefined)) continue;
      if (missing.length > 0) {
        yield {
          kind: 'open',
          message: `Whether "${product.id}" of the layer "${layer.id}" needs a fire test of the assembly depends on ${missing.join(' and ')}; state ${missing.length === 1 ? 'it' : 'them'}.`,
          required,
          missing,
          ...base,
        };
        continue;
      }
      const told = `"${product.id}" of the layer "${layer.id}" is combustible, on a building of type ${project.constructionType?.value ?? ''}, ${project.heightMm?.text ?? ''} high`;
      yield namesTest(layer)
        ? {
            kind: 'pass',
            message: `${told}; NFPA 285 is named. That the assembly tested is the one drawn is for the reviewer to see.`,
            required,
            provided: 'NFPA 285',
            ...base,
          }
        : {
            kind: 'fail',
            message: `${told}; no fire test of the assembly is named.`,
            required,
            provided: 'none named',
            correct: `Submit the report of the assembly and name NFPA 285 under "standards" of the layer, or declare the exception that applies as a deviation.`,
            related: [{ message: 'declared combustible', at: combustible?.at ?? product.at }],
            ...base,
          };
    }
  },
});
