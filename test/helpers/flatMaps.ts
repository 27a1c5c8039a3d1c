/** Channel maps of a screw made without solving: straight-sided grids with ages that are known everywhere. */

import type { Stations } from '../../core/geometry/types.ts';
import type { ChannelMap } from '../../core/path/viewTypes.ts';
import { axialGap, stationPlace, stationValue } from '../../core/present/mapBetween.ts';

const columns = 9;
const rows = 5;

/** A map at z (m) whose age is `age(z, radius)`, s; its sides lean as the flanks do. */
export function flatMap(stations: Stations, z: number, age: (z: number, r: number) => number): ChannelMap {
  const place = stationPlace(stations, z);
  const [bore, depth] = [stationValue(stations.barrelRadius, place), stationValue(stations.depth, place)];
  const lean = Math.tan(stationValue(stations.flankAngle, place));
  const gap = axialGap(stations, place);
  const made = { x: [] as number[], r: [] as number[], age: [] as number[] };
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      const down = depth * (1 - j / (rows - 1));
      const x = ((2 * i) / (columns - 1) - 1) * (gap / 2 - down * lean);
      made.x.push(x);
      made.r.push(bore - down);
      made.age.push(age(z + x, bore - down));
    }
  }
  return {
    ...{ z, section: stations.section[place.low], columns, rows, meanAge: age(z, bore) },
    x: Float32Array.from(made.x),
    r: Float32Array.from(made.r),
    age: Float32Array.from(made.age),
    dwell: Float32Array.from(made.age, () => 1),
    speed: Float32Array.from(made.age, () => 0.01),
  };
}
