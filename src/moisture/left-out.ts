/** What each method leaves out, in sentences that are printed with its results. */
import { standard } from './data/air.js';
import type { CodeSource } from '../vapor/data/code-source.js';

export const METHODS = ['monthly', 'period', 'surface', 'inward drive'] as const;
export type Method = (typeof METHODS)[number];

interface Omission {
  readonly sentence: string;
  readonly methods: readonly Method[];
  readonly source: CodeSource;
}

const SCOPE = standard('EN ISO 13788:2012, abstract of the scope', 'seen');
const PRACTICE: CodeSource = {
  basis: 'practice',
  citation: 'limits of steady one-way calculation',
  provenance: 'common practice, no source',
};
const PHYSICS: CodeSource = { basis: 'physics', citation: 'assumptions of the calculation', provenance: 'computed' };
const STEADY: readonly Method[] = ['monthly', 'period', 'inward drive'];

export const OMISSIONS: readonly Omission[] = [
  {
    sentence: 'Air that leaks through the wall carries far more vapor than diffusion does; none is counted here.',
    methods: METHODS,
    source: SCOPE,
  },
  {
    sentence: 'Rain that gets in, water built in during construction and damp from the ground are not counted.',
    methods: ['monthly', 'period', 'surface'],
    source: PRACTICE,
  },
  {
    sentence: 'Water moves as vapor only; capillary flow and run-off are left out.',
    methods: STEADY,
    source: SCOPE,
  },
  {
    sentence: 'Materials keep one conductivity and one permeance however damp they become.',
    methods: STEADY,
    source: SCOPE,
  },
  {
    sentence: 'Wood, gypsum and masonry take up and give back moisture; that storage is left out.',
    methods: METHODS,
    source: SCOPE,
  },
  {
    sentence: 'Each month is one steady state of mean weather; days, nights and cold spells are evened out.',
    methods: ['monthly', 'surface'],
    source: PHYSICS,
  },
  {
    sentence: 'Two fixed periods stand for every climate; the place of the building is not looked at.',
    methods: ['period'],
    source: PHYSICS,
  },
  {
    sentence: 'Sun, night sky and the heat of melting and freezing do not warm or cool the wall.',
    methods: ['monthly', 'period', 'surface'],
    source: PRACTICE,
  },
  {
    sentence:
      'One steady state stands for the sunny hours; how cladding heats, dries and is wetted again is not followed.',
    methods: ['inward drive'],
    source: PHYSICS,
  },
  {
    sentence: 'Heat and vapor flow straight through; studs, corners, ties and edges of openings are left out.',
    methods: METHODS,
    source: PHYSICS,
  },
];

/** The sentences that go with a result of the method, most weighty first. */
export function leftOutBy(method: Method): readonly string[] {
  return OMISSIONS.filter((o) => o.methods.includes(method)).map((o) => o.sentence);
}

/** Printed after them. */
export const CAUTION =
  'An estimate for review, not a forecast. Local code and licensed practice govern; where damage could follow, ' +
  'have the wall assessed by transient simulation and on site.';
