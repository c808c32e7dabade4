/** From project, specification and settings documents to their typed parts. */
import { Entry, given } from './entry.js';
import { MEASURES, type Property } from './measures.js';
import { remembered } from './remembered.js';
import type { Deviation, Project, Requirement } from './types.js';
import type { Dimension } from '../quantity/types.js';
import type { ReadDocument } from '../reading/types.js';

/** The project of a checked project document. */
export const buildProject = remembered((document: ReadDocument): Project => {
  const e = Entry.root(document);
  const place = e.get('place');
  const code = e.get('code');
  const site = e.get('siteConditions');
  const work = site?.get('temperature');
  return given<Project>({
    at: { document, path: [] },
    id: document.id,
    title: e.word('title')?.value ?? document.id,
    zone: place?.word('zone'),
    county: place?.word('county'),
    state: place?.word('state'),
    station: place?.word('station'),
    code:
      code === undefined
        ? undefined
        : {
            at: code.at,
            title: code.word<'IRC' | 'IBC' | 'NBC'>('title')?.value ?? 'IBC',
            edition: code.count('edition')?.value ?? Number(code.word('edition')?.value),
          },
    heightMm: e.length('height'),
    designPressurePa: e.get('wind')?.quantity('designPressure', 'pressure'),
    constructionType: e.word('constructionType'),
    uncoveredS: site?.quantity('uncovered', 'time'),
    workMinC: work?.quantity('min', 'temperature'),
    workMaxC: work?.quantity('max', 'temperature'),
    standards: e.words('standards'),
  });
});

const COMPARISONS = [
  ['atLeast', 'at least'],
  ['atMost', 'at most'],
  ['equals', 'equals'],
  ['oneOf', 'one of'],
] as const;

/** The requirements of a specification document. */
export const buildRequirements = remembered((document: ReadDocument): readonly Requirement[] => {
  const root = Entry.root(document);
  const section = root.word('section')?.value ?? document.id;
  return root.items('requirements').flatMap((e): Requirement[] => {
    const property = e.word<Property>('property');
    if (property === undefined) return [];
    const dimension = MEASURES[property.value].dimension;
    const paragraph = e.word('paragraph')?.value;
    for (const [key, comparison] of COMPARISONS) {
      if (!e.has(key)) continue;
      // Counts and words are written bare; everything else carries its unit.
      const bare = dimension === 'count' ? e.count(key) : undefined;
      const value =
        bare === undefined
          ? e.quantity(key, dimension as Dimension)
          : {
              dimension: 'fraction' as const,
              text: String(bare.value),
              value: bare.value,
              bound: 'exactly' as const,
              unit: '',
              system: 'either' as const,
              at: bare.at,
            };
      return [
        given<Requirement>({
          at: e.at,
          property: property.value,
          subject: e.word('subject')?.value,
          product: e.word('product')?.value,
          comparison,
          value,
          words: comparison === 'one of' ? e.words(key).map((w) => w.value) : undefined,
          citation: `Section ${section}${paragraph === undefined ? '' : `, ${paragraph}`}`,
          basis: 'specification',
        }),
      ];
    }
    return [];
  });
});

/** Accepted deviations, from a detail or from the settings of the library. */
export const buildDeviations = remembered(
  (document: ReadDocument): readonly (Deviation & { readonly detail?: string })[] => {
    return Entry.root(document)
      .items('deviations')
      .flatMap((e) => {
        const rule = e.word('rule');
        const reason = e.word('reason');
        if (rule === undefined || reason === undefined) return [];
        return [
          given<Deviation & { readonly detail?: string }>({
            at: e.at,
            id: e.word('id')?.value,
            rule,
            of: e.word('of'),
            reason,
            acceptedBy: e.word('acceptedBy'),
            until: e.word('until'),
            detail: e.word('detail')?.value,
          }),
        ];
      });
  },
);
