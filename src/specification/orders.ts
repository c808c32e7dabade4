/** The verbs with which sections order work, as data. */
const VERBS =
  'apply extend lap overlap install space provide allow cure set place turn hold leave maintain store ' +
  'test submit notify keep use fill seal reinforce treat cover carry continue terminate anchor fasten ' +
  'limit perform conduct take wait prime clean protect form slope project run bed tool coat embed ' +
  'locate position measure repair obtain retain deliver build construct flash wrap center attach secure ' +
  'expose complete remove replace make mix recoat stop begin do mask give furnish send grind conform ' +
  'comply meet discard roll report record schedule inspect shim warrant ship spray brush pull check ' +
  'confirm align drill cut trim finish ' +
  'offset stagger fold tuck nail screw bend bond insert press dress hem lay hang rout score join mount';

/** Every verb of an order, as the alternatives of a pattern. */
export const ORDERS = VERBS.split(' ').join('|');
