/** What is checked of a submittal as a whole. The pages stand in the folder `rules`, as those of all rules do. */
import type { OwnRule } from '../own-rules.js';
import type { Source } from '../result.js';

/** Contract forms that the sources below stand for; a project that signed another form names it in its own section. */
export const CONTRACTOR_REVIEW: readonly Source[] = [
  {
    basis: 'standard',
    citation: 'AIA A201-2017, 3.12.5 and 3.12.6',
    provenance: 'seen at second hand',
  },
  {
    basis: 'standard',
    citation: 'general conditions in the form of EJCDC, 6.17',
    provenance: 'seen',
  },
];

export const DEVIATIONS_IN_WRITING: readonly Source[] = [
  {
    basis: 'guide',
    citation: 'EJCDC column on deviations in submittals: review does not change the contract',
    provenance: 'seen',
  },
  {
    basis: 'standard',
    citation: 'UFGS 01 33 00 (2006), 1.4.4, variations (heading)',
    provenance: 'seen',
  },
  { basis: 'standard', citation: 'AIA A201, 3.12.8', provenance: 'from memory, confirm' },
];

export const SUBSTITUTIONS: readonly Source[] = [
  {
    basis: 'guide',
    citation: 'public project section on substitutions: requested separately, not implied by shop drawings',
    provenance: 'seen',
  },
];

export const PRODUCT_DATA: readonly Source[] = [
  {
    basis: 'guide',
    citation: 'UFGS 01 33 00, SD-03 product data',
    provenance: 'seen',
  },
];

export const HABIT: readonly Source[] = [
  { basis: 'practice', citation: 'common practice', provenance: 'common practice, no source' },
];

/** Each finding names its own paragraph. */
const SECTION: readonly Source[] = [
  {
    basis: 'specification',
    citation: 'the paragraph of the section that asks for the item',
    provenance: 'project document',
  },
];

const rule = (
  id: string,
  title: string,
  level: OwnRule['level'],
  summary: string,
  sources: readonly Source[],
): OwnRule => ({ id, title, level, summary, help: summary, sources });

export const SUBMITTAL_RULES: readonly OwnRule[] = [
  rule(
    'deviation/covers-part',
    'Deviation that leaves another source unmet',
    'warning',
    'What an accepted deviation allows meets every other binding source.',
    HABIT,
  ),
  rule(
    'deviation/undeclared',
    'Undeclared deviation',
    'warning',
    'Each difference between a submittal and a paragraph of the specification is declared in the submittal.',
    DEVIATIONS_IN_WRITING,
  ),
  rule(
    'submittal/contractor-review',
    "Contractor's review and stamp",
    'warning',
    'The submittal carries the review stamp of the contractor, its date, its role and the statement that the work was coordinated.',
    CONTRACTOR_REVIEW,
  ),
  rule(
    'submittal/details-found',
    'Details of the submittal',
    'error',
    'Every detail that the submittal names exists, and it holds at least one.',
    HABIT,
  ),
  rule(
    'submittal/product-data',
    'Product data of the products used',
    'error',
    'The submittal contains product data for every product that its details use.',
    PRODUCT_DATA,
  ),
  rule(
    'submittal/required-items',
    'Items that the section requires',
    'error',
    'The submittal contains every item that the section asks to be submitted, for the product and by the method it asks for.',
    SECTION,
  ),
  rule(
    'submittal/resubmission',
    'Trace of a resubmission',
    'warning',
    'A submittal that was returned names what was sent in before, and its revision is higher.',
    HABIT,
  ),
  rule(
    'submittal/section-number',
    'Section of the submittal',
    'warning',
    'The section of the submittal is one of the project specification, and its details belong to it.',
    HABIT,
  ),
  rule(
    'submittal/unasked-items',
    'Items not required by the section',
    'note',
    'Every item of the submittal answers a paragraph of the section.',
    HABIT,
  ),
  rule(
    'substitution/accepted',
    'Acceptance of a substitution',
    'warning',
    'A product in place of the one specified is used only when the substitution is accepted and in force.',
    SUBSTITUTIONS,
  ),
  rule(
    'substitution/in-details',
    'Substitution in the details',
    'warning',
    'The details use the proposed product or the specified one, not both, and what was accepted is what they use.',
    SUBSTITUTIONS,
  ),
];
