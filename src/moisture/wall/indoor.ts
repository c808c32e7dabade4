/** Indoor air of a project: as it declares, else of an ordinary building, and then said so. */
import { INDOOR_CURVES, type IndoorCurveName } from '../data/indoor.js';
import type { IndoorClimate } from '../interior-climate.js';
import type { Project } from '../../model/types.js';
import type { Locus } from '../../reading/types.js';

export interface ProjectIndoor {
  readonly climate: IndoorClimate;
  /** A sentence to print with the result. */
  readonly text: string;
  readonly assumed: boolean;
  /** Where the project declares it. */
  readonly at?: Locus;
}

export const ASSUMED_CURVE: IndoorCurveName = 'EN 15026 normal';
/** Room temperature where a humidity class is declared without one, degC. */
const ROOM_C = 20;

/**
 * How the indoor air of a project is known.
 *
 * @see INDOOR_CURVES and HUMIDITY_CLASSES for the assumptions and how they are known
 */
export function indoorOfProject(project: Pick<Project, 'indoor'> | undefined): ProjectIndoor {
  const indoor = project?.indoor;
  if (indoor?.humidityClass !== undefined) {
    const temperatureC = indoor.temperatureC?.value ?? ROOM_C;
    const humidityClass = indoor.humidityClass.value;
    return {
      climate: { by: 'humidity class', humidityClass, temperatureC },
      text: `Indoor air of humidity class ${humidityClass} (ISO 13788), as the project declares.`,
      assumed: false,
      at: indoor.at,
    };
  }
  if (indoor?.temperatureC !== undefined && indoor.humidity !== undefined)
    return {
      climate: {
        by: 'set points',
        temperatureC: indoor.temperatureC.value,
        relativeHumidity: indoor.humidity.upper ?? indoor.humidity.value,
      },
      text: `Indoor air of ${indoor.temperatureC.text} and ${indoor.humidity.text} relative humidity all year, as the project declares.`,
      assumed: false,
      at: indoor.at,
    };
  const { source } = INDOOR_CURVES[ASSUMED_CURVE];
  return {
    climate: { by: 'curve', curve: ASSUMED_CURVE },
    text: `Indoor air is that of normal occupancy (${source.citation}, ${source.provenance}): 30 % relative humidity in hard frost to 60 % in summer heat; the project declares none.`,
    assumed: true,
  };
}
