/** Made-up weather and walls for the checks of this room. */
import { outdoorAir, yearOfAir, type Air, type MonthOfAir } from '../interior-climate.js';
import type { HumidityClass } from '../data/indoor.js';
import type { MoistureLayer } from '../resistance.js';

export const OUTDOOR_C = [-1, 0, 4, 9, 14, 18, 19, 19, 15, 10, 5, 1] as const;
export const OUTDOOR_HUMIDITY = [0.85, 0.84, 0.78, 0.72, 0.68, 0.69, 0.73, 0.75, 0.79, 0.83, 0.88, 0.88] as const;

/** A cool coastal year. */
export const outdoors = (): Air[] => OUTDOOR_C.map((t, m) => outdoorAir(t, OUTDOOR_HUMIDITY[m] as number));

/** The same with a heated room of 20 degC and the bare limit of a humidity class. */
export const heated = (humidityClass: HumidityClass): MonthOfAir[] =>
  yearOfAir(outdoors(), { by: 'humidity class', humidityClass, temperatureC: 20, factor: 1 });

export const layer = (id: string, rM2KW: number, sdM: number): MoistureLayer => ({ id, rM2KW, sdM, storage: 'other' });
