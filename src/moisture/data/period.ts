/** The two standard periods of the German period method. */
import { standard, SECONDS_PER_DAY } from './air.js';

export const PERIOD_METHOD = {
  wetting: {
    seconds: 90 * SECONDS_PER_DAY,
    inside: { temperatureC: 20, vaporPressurePa: 1168 },
    outside: { temperatureC: -5, vaporPressurePa: 321 },
  },
  drying: {
    seconds: 90 * SECONDS_PER_DAY,
    /** On both sides of the element, Pa. */
    airPa: 1200,
    /** At every wet plane, Pa; a roof is warmed more by the sun. */
    planePa: { wall: 1700, roof: 2000 },
  },
  source: standard('DIN 4108-3, period method, in a textbook of building physics', 'seen at second hand'),
} as const;
