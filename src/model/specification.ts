/** From a specification document to its requirements and to what it asks to be submitted. */
import { Entry, given } from './entry.js';
import { MEASURES, type Property, type Subject } from './measures.js';
import { remembered } from './remembered.js';
import type { Condition, Family, Measured, RequiredSubmittal, Requirement, Stated, SubmittalItem } from './types.js';
import { isProblem, parseQuantity } from '../quantity/parse.js';
import type { ReadDocument } from '../reading/types.js';

const COMPARISONS = [
  ['atLeast', 'at least'],
  ['atMost', 'at most'],
  ['equals', 'equals'],
  ['oneOf', 'one of'],
] as const;

/** The requirements of a specification document, in its order; those in words too. */
export const buildRequirements = remembered((document: ReadDocument): readonly Requirement[] => {
  const root = Entry.root(document);
  return root.items('requirements').map((e) => {
    const property = e.word<Property>('property')?.value;
    const [key, comparison] = COMPARISONS.find(([name]) => e.has(name)) ?? [];
    const asked = key === undefined ? [] : e.words(key);
    return given<Requirement>({
      at: e.at,
      paragraph: e.word('paragraph'),
      property,
      characteristic: e.word('characteristic'),
      subject: e.word<Subject>('subject')?.value,
      product: e.word('product'),
      comparison,
      asked,
      values: property === undefined ? [] : asked.flatMap((value) => measured(value, property)),
      method: e.word('method'),
      text: e.word('text'),
      when: buildCondition(e.get('when')),
      confirmed: e.truth('confirmed')?.value ?? true,
      citation: citationOf(root, e),
      basis: 'specification',
    });
  });
});

/** What a specification document asks to be submitted, in its order. */
export const buildSubmittals = remembered((document: ReadDocument): readonly RequiredSubmittal[] => {
  const root = Entry.root(document);
  return root.items('submittals').flatMap((e) => {
    const item = e.word<SubmittalItem>('item');
    if (item === undefined) return [];
    return [
      given<RequiredSubmittal>({
        at: e.at,
        paragraph: e.word('paragraph'),
        item,
        of: e.word('of'),
        text: e.word('text'),
        confirmed: e.truth('confirmed')?.value ?? true,
        citation: citationOf(root, e),
      }),
    ];
  });
});

/** `Section 07 27 26, 3.4.B.2`. */
function citationOf(root: Entry, e: Entry): string {
  const section = root.word('section')?.value ?? root.document.id;
  const paragraph = e.word('paragraph')?.value;
  return `Section ${section}${paragraph === undefined ? '' : `, ${paragraph}`}`;
}

/** A value in the dimension of its property. Counts are written bare; everything else carries its unit. */
function measured({ value: text, at }: Stated<string>, property: Property): Measured[] {
  const { dimension } = MEASURES[property];
  if (dimension === 'count')
    return [{ dimension: 'fraction', text, value: Number(text), bound: 'exactly', unit: '', system: 'either', at }];
  const quantity = parseQuantity(text, dimension);
  return isProblem(quantity) ? [] : [{ ...quantity, at }];
}

function buildCondition(e: Entry | undefined): Condition | undefined {
  if (e === undefined) return undefined;
  return given<Condition>({
    at: e.at,
    zones: e.has('zones') ? e.words('zones').map((zone) => zone.value) : undefined,
    heightAboveMm: e.length('heightAbove'),
    heightUpToMm: e.length('heightUpTo'),
    framing: e.word<'wood' | 'steel'>('framing')?.value,
    family: e.word<Family>('family')?.value,
    mounting: e.word<'flange' | 'recessed'>('mounting')?.value,
  });
}
