/** The hottest place of a working machine. */

import type { FindingContext } from './context.ts';
import { nozzleOf } from './heaterRules.ts';

/** A place is named instead of another only where it is hotter by more than this, K. */
const asHot = 0.5;

/** Hottest of walls, melt and nozzle, K, and where: z in m. Shear may heat the melt above any set temperature. */
export function hottest({ design, prediction }: FindingContext): { temperature: number; z: number; where: string } {
  const { stations, axial } = prediction;
  let place = {
    temperature: Math.max(design.nozzle.setTemperature, nozzleOf(prediction).reached),
    z: design.barrel.length,
    where: 'nozzle',
  };
  let most = place.temperature;
  for (let i = 0; i < stations.count; i++) {
    const temperature = Math.max(axial.meltTemperature[i], axial.wallTemperature[i]);
    most = Math.max(most, temperature);
    if (temperature > place.temperature + asHot) place = { temperature, z: stations.z[i], where: 'barrel' };
  }
  return { ...place, temperature: most };
}
