/**
 * What can be asked of a detail as a limit: the properties a specification, a data sheet, a code or practice
 * may set a value for, in the words a requirement uses.
 *
 * Adding an entry here makes the property available to requirements; a rule then asks `limit({ property })`.
 */
import type { Dimension } from '../quantity/types.js';

export interface Measure {
  readonly dimension: Dimension | 'count' | 'words';
  readonly meaning: string;
}

export const MEASURES = {
  'extension onto wall': {
    dimension: 'length',
    meaning: 'how far flashing reaches onto the wall face from the edge of the rough opening',
  },
  'extension into opening': {
    dimension: 'length',
    meaning: 'how far flashing reaches inward on the sill, jambs and head of the rough opening',
  },
  'extension past jambs': {
    dimension: 'length',
    meaning: 'how far sill or head flashing runs past each jamb of the rough opening',
  },
  'sill slope': { dimension: 'slope', meaning: 'slope of the sill pan to the exterior' },
  'back dam height': { dimension: 'length', meaning: 'height of the inboard upturned edge of a sill pan' },
  freeboard: {
    dimension: 'length',
    meaning: 'height of the back dam above the head of water at the water test pressure',
  },
  'end dam height': { dimension: 'length', meaning: 'height of the upturned ends of a pan or flashing' },
  lap: { dimension: 'length', meaning: 'overlap of one piece over another where water runs down' },
  'end lap': { dimension: 'length', meaning: 'overlap of sheet ends, at vertical joints' },
  'cover each side': { dimension: 'length', meaning: 'cover of joint treatment on each side of a sheathing joint' },
  'collar extension': { dimension: 'length', meaning: 'how far a collar or boot reaches beyond the penetration' },
  'bearing each side': { dimension: 'length', meaning: 'bonded width of a transition membrane on each side' },
  'corner leg': { dimension: 'length', meaning: 'width of corner reinforcement on each face' },
  upstand: { dimension: 'length', meaning: 'height a flashing turns up the wall behind the barrier' },
  'lap onto foundation': {
    dimension: 'length',
    meaning: 'lap of the membrane onto the foundation or its waterproofing',
  },
  'base flashing above grade': { dimension: 'length', meaning: 'height of base flashing above grade' },
  'wet film': { dimension: 'film', meaning: 'wet film thickness, all coats' },
  'dry film': { dimension: 'film', meaning: 'dry film thickness, all coats' },
  'joint width': { dimension: 'length', meaning: 'width of a sealant joint' },
  'joint depth': { dimension: 'length', meaning: 'depth of sealant in a joint' },
  'backer rod compression': {
    dimension: 'fraction',
    meaning: 'how much larger the backer rod is than the joint, as a share of joint width',
  },
  'weep spacing': { dimension: 'length', meaning: 'distance between weeps' },
  'weep count': { dimension: 'count', meaning: 'number of weeps for each opening' },
  'gap under unit': { dimension: 'length', meaning: 'clear gap between pan and unit' },
  'drip projection': { dimension: 'length', meaning: 'how far the drip stands clear of the surface below' },
  'air permeance': { dimension: 'airLeakage', meaning: 'air permeance of a material at 75 Pa' },
  permeance: { dimension: 'permeance', meaning: 'water vapor permeance of a material' },
  'thermal resistance': {
    dimension: 'thermalResistance',
    meaning: 'thermal resistance of the continuous insulation',
  },
  wait: { dimension: 'time', meaning: 'time before the next work may cover this one' },
  'sheathing gap': { dimension: 'length', meaning: 'gap between sheathing panels' },
} as const satisfies Record<string, Measure>;
export type Property = keyof typeof MEASURES;

/** What a requirement may be about. */
export const SUBJECTS = [
  'opening flashing',
  'sill pan',
  'jamb flashing',
  'head flashing',
  'counterflashing',
  'field membrane',
  'joint treatment',
  'corner treatment',
  'penetration',
  'transition membrane',
  'base flashing',
  'through-wall flashing',
  'interior seal',
  'exterior seal',
] as const;
export type Subject = (typeof SUBJECTS)[number];

/** Broader subject whose requirements also apply: what is asked of opening flashing is asked of the pan too. */
export const BROADER: Partial<Record<Subject, Subject>> = {
  'sill pan': 'opening flashing',
  'jamb flashing': 'opening flashing',
  'head flashing': 'opening flashing',
};
