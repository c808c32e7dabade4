/**
 * Designations of standards in prose, and what the well-known ones measure, so that a method that does not measure the
 * property it stands beside is noticed.
 */

export interface Designation {
  readonly start: number;
  readonly end: number;
  /** As cited, with single spaces: `ASTM E96/E96M`. */
  readonly text: string;
  /** Without the year, the metric twin and a space inside: `ASTM E96`. */
  readonly key: string;
  /** Of ASTM E96, which cup: `Procedure B`, `desiccant method`; a permeance is not comparable across cups. */
  readonly procedure?: string;
}

const BODIES =
  'ASTM|AAMA|FGIA|NFPA|ISO|EN|ANSI|UL|ULC|CAN/ULC|CAN/CSA|CSA|ICC-ES|ICC|AATCC|TAPPI|ASHRAE|SAE|SSPC|NACE|AMPP|DIN|BS|TAS|FM|CGSB|CAN/CGSB|WDMA|PA';
const DESIGNATION = new RegExp(
  String.raw`\b(${BODIES})(?:[ -](?:International|Standard))?[ -]?((?:[A-Z]{1,3}[ -]?)?\d+(?:\.\d+)*(?:[ ]?\/[ ]?(?:[A-Z]{1,3}[ -]?)?\d+(?:\.\d+)*M?|M)?(?:-\d{2,4}[a-z]?)?(?:\(\d{4}\))?)(?![\d.]*\d)`,
  'g',
);
/** A further designation of the same body, after a comma or "and": `ASTM E2357 and E283`. */
const FURTHER = /^(?:,? (?:and|or) |, ?|\/)([A-GI-Z]\d{2,5}(?:\/[A-Z]\d+M)?(?:-\d{2,4})?)\b/;

function keyOf(body: string, number: string): string {
  const short = number
    .replace(/\(\d{4}\)$/, '')
    .replace(/\s*\/.*$/, '')
    .replace(/(\d)M$/, '$1')
    .replace(/-\d{2,4}[a-z]?$/, '');
  return `${body} ${short.replace(/([A-Z])[ -](\d)/, '$1$2')}`;
}

const LETTERS = String.raw`(?:BW|[A-E])\b(?:(?:,\s*|\s+(?:and|or)\s+|\s*[&/]\s*)(?:BW|[A-E])\b)*`;
const CUP = String.raw`(?:[Dd]esiccant|(?:[Ii]nverted )?[Ww]ater|(?:[Dd]ry|[Ww]et)[- ][Cc]up)`;
/** After the number, with or without a comma or a parenthesis: `, Procedure B`, ` (desiccant method A)`, ` wet cup`. */
const PROCEDURE = new RegExp(
  String.raw`^[,;\s]*\(?\s*((?:${CUP} )?(?:[Pp]rocedures?|[Mm]ethods?) ${LETTERS}|${CUP} (?:[Pp]rocedure|[Mm]ethod|[Cc]up)|(?:[Dd]ry|[Ww]et)[- ][Cc]up)`,
);
/** Before it: `Procedure B of ASTM E96`. */
const PROCEDURE_OF = new RegExp(String.raw`((?:[Pp]rocedures?|[Mm]ethods?) ${LETTERS}) (?:of|in) $`);

/** The procedure of ASTM E96 that is cited with it. */
function procedureOf(text: string, { start, end, key }: Designation): string | undefined {
  if (key !== 'ASTM E96') return undefined;
  const found = PROCEDURE.exec(text.slice(end)) ?? PROCEDURE_OF.exec(text.slice(0, start));
  return found?.[1]?.replace(/\s+/g, ' ');
}

/** The designations a text cites, in order. */
export function designationsIn(text: string): readonly Designation[] {
  const found: Designation[] = [];
  for (const match of text.matchAll(DESIGNATION)) {
    const body = match[1] ?? '';
    let end = match.index + match[0].length;
    found.push({ start: match.index, end, text: match[0], key: keyOf(body, match[2] ?? '') });
    for (let more = FURTHER.exec(text.slice(end)); more !== null; more = FURTHER.exec(text.slice(end))) {
      const number = more[1] ?? '';
      const stop = end + more[0].length;
      found.push({ start: stop - number.length, end: stop, text: `${body} ${number}`, key: keyOf(body, number) });
      end = stop;
    }
  }
  return found.map((one) => {
    const procedure = procedureOf(text, one);
    return procedure === undefined ? one : { ...one, procedure };
  });
}

/**
 * What is measured, as far as methods are told apart, and the words that speak of it. Words of a more particular kind
 * are looked for first, and what they cover is not read again (`air leakage` inside of `air leakage rate`).
 */
export const MEASURED = {
  'water vapor transmission':
    /water[- ]vapou?r (?:transmission|permeance|permeability)|vapou?r permeance|vapou?r transmission|moisture vapou?r transmission|\bperms?\b/i,
  'air permeance of materials': /air permeance|air permeability/i,
  'air leakage of assemblies': /air (?:leakage|infiltration)|air barrier assembl(?:y|ies)/i,
  'water penetration': /water (?:penetration|infiltration|leakage|resistance)|resistance to water penetration/i,
  'peel adhesion': /\bpeel\b/i,
  'pull-off adhesion': /pull(?:-off| off)?(?: adhesion| strength| test)|tensile adhesion|bond strength|pull-off/i,
  'tensile properties': /\btensile (?:strength|properties)|\belongation\b|ultimate elongation/i,
  'tear resistance': /\btear\b/i,
  'crack bridging': /crack[- ]bridging/i,
  'low temperature flexibility':
    /low[- ]temperature flex\w*|flexibility at low temperature|cold[- ]temperature flex\w*/i,
  'nail sealability': /nail seal\w*|self[- ]sealability|fastener seal\w*/i,
  'fire propagation of walls':
    /flame propagation|fire propagation|propagation of (?:fire|flame)|fire[- ]test(?:ed)? (?:of )?(?:wall )?assembl/i,
  'surface burning': /flame[- ]spread|smoke[- ]develop\w*|surface burning/i,
  'fungal growth': /\bmold\b|\bmildew\b|fung(?:us|al|i)/i,
  'substrate moisture': /capillary moisture|plastic sheet method|moisture (?:in|of) (?:the )?(?:concrete|substrate)/i,
  'wet film': /wet[- ]film|wet mils?/i,
  'dry film': /dry[- ]film|dry mils?/i,
  'solids by volume': /(?:volume|percent) solids|solids by volume|volume nonvolatile/i,
  'solids by weight': /solids by weight|weight solids/i,
  'VOC content': /\bVOC\b|volatile organic/i,
  hardness: /\bhardness\b|durometer/i,
  'joint movement': /movement capability|joint movement|cyclic movement/i,
  weathering: /\bweathering\b|UV (?:resistance|exposure)|ultraviolet/i,
} as const satisfies Record<string, RegExp>;
export type Measured = keyof typeof MEASURED;

/** What a text speaks of measuring. */
export function measuredIn(text: string): readonly Measured[] {
  return (Object.keys(MEASURED) as Measured[]).filter((kind) => MEASURED[kind].test(text));
}

/**
 * What well-known methods measure. All are from memory, confirm, unless said otherwise beside them: they raise a
 * question to ask, never a finding.
 */
const METHODS: Readonly<Record<string, readonly Measured[]>> = {
  'ASTM E96': ['water vapor transmission'],
  'ASTM F1249': ['water vapor transmission'],
  // Reference pressure and purpose as in the energy codes that name it (air permeance of materials, 75 Pa).
  'ASTM E2178': ['air permeance of materials'],
  'ASTM E2357': ['air leakage of assemblies'],
  'ASTM E283': ['air leakage of assemblies'],
  'ASTM E783': ['air leakage of assemblies'],
  'ASTM E779': ['air leakage of assemblies'],
  'ASTM E3158': ['air leakage of assemblies'],
  'ASTM E1186': ['air leakage of assemblies'],
  'ASTM E1680': ['air leakage of assemblies'],
  // Water penetration by uniform static pressure; so cited in model building codes.
  'ASTM E331': ['water penetration'],
  'ASTM E1105': ['water penetration'],
  'ASTM E547': ['water penetration'],
  'AAMA 501.1': ['water penetration'],
  'AAMA 501.2': ['water penetration'],
  'ASTM D4541': ['pull-off adhesion'],
  'ASTM D7234': ['pull-off adhesion'],
  'ASTM C297': ['pull-off adhesion'],
  'ASTM D903': ['peel adhesion'],
  'ASTM D3330': ['peel adhesion'],
  'ASTM C794': ['peel adhesion'],
  'ASTM D1000': ['peel adhesion', 'tensile properties'],
  'ASTM D412': ['tensile properties'],
  'ASTM D638': ['tensile properties'],
  'ASTM D882': ['tensile properties'],
  'ASTM D2370': ['tensile properties'],
  'ASTM D624': ['tear resistance'],
  'ASTM D1004': ['tear resistance'],
  'ASTM C1305': ['crack bridging', 'low temperature flexibility'],
  'ASTM D146': ['low temperature flexibility'],
  'ASTM D522': ['low temperature flexibility'],
  // Also the specification of self-adhering roofing sheets; its sealability clause is what wall sections cite.
  'ASTM D1970': ['nail sealability', 'low temperature flexibility', 'tensile properties'],
  'NFPA 285': ['fire propagation of walls'],
  'ASTM E84': ['surface burning'],
  'UL 723': ['surface burning'],
  'ASTM D5590': ['fungal growth'],
  'ASTM D3273': ['fungal growth'],
  'ASTM G21': ['fungal growth'],
  'ASTM D4263': ['substrate moisture'],
  'ASTM F2170': ['substrate moisture'],
  'ASTM D4414': ['wet film'],
  'ASTM D1212': ['wet film'],
  'ASTM D6132': ['dry film'],
  'ASTM D4138': ['dry film'],
  'ASTM D7091': ['dry film'],
  'ASTM D2697': ['solids by volume'],
  'ASTM D2369': ['solids by weight', 'VOC content'],
  'ASTM D3960': ['VOC content'],
  'ASTM D2240': ['hardness'],
  'ASTM C661': ['hardness'],
  'ASTM C719': ['joint movement'],
  'ASTM G154': ['weathering'],
  'ASTM G155': ['weathering'],
};

/** The word `adhesion` alone fits both ways of measuring it. */
const KIN: readonly (readonly Measured[])[] = [
  ['crack bridging', 'low temperature flexibility'],
  ['solids by volume', 'solids by weight'],
];

/** What a well-known method measures; undefined for every other. */
export function measuredBy(key: string): readonly Measured[] | undefined {
  return METHODS[key];
}

/**
 * Whether a method fits what its surroundings speak of measuring.
 *
 * @returns true also when nothing is known of the method, or nothing measurable is spoken of
 */
export function methodFits(key: string, spokenOf: readonly Measured[]): boolean {
  const measured = METHODS[key];
  if (measured === undefined || spokenOf.length === 0) return true;
  return spokenOf.some(
    (kind) =>
      measured.includes(kind) || KIN.some((kin) => kin.includes(kind) && kin.some((other) => measured.includes(other))),
  );
}
