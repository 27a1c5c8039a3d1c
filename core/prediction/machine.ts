/** A design made ready for the flow stages: stations, channel, head and wall temperatures, with warm solvers. */

import type { Design } from '../design/types.ts';
import { highestScrewSpeed } from '../drive/motor.ts';
import { type FeedPlace, feedPlace } from '../feed/capacity.ts';
import { type Channel, createChannel } from '../flow/channel.ts';
import { createHead, type Head } from '../flow/headDrop.ts';
import { headElements } from '../flow/headPieces.ts';
import { buildStations } from '../geometry/stations.ts';
import type { Stations } from '../geometry/types.ts';
import { type WallTemperatures, wallTemperatures } from '../heat/wallTemperature.ts';
import { localIndex } from '../material/viscosityLaw.ts';
import { interpolateLinear } from '../math/interpolate.ts';

/** What the heaters can carry one by one, m³/s. */
interface HeaterFlows {
  /** most at which every heater holds its set temperature, and whose watts end it; null where none do */
  readonly holding: number;
  readonly holdingLimit: string | null;
  /** most at which no zone falls below melting and what leaves is molten */
  readonly melting: number;
}

const unknownHeaters: HeaterFlows = {
  holding: Number.POSITIVE_INFINITY,
  holdingLimit: null,
  melting: Number.POSITIVE_INFINITY,
};

/** All that does not depend on speed and flow. */
export interface Machine {
  readonly design: Design;
  readonly stations: Stations;
  readonly channel: Channel;
  readonly head: Head;
  readonly walls: WallTemperatures;
  /** wall and screw temperatures at the stations, K */
  readonly wallAt: { readonly barrel: Float64Array; readonly screw: Float64Array };
  /** most melt flows, m³/s, as found heater by heater; Infinity before they were looked for */
  readonly heaters: HeaterFlows;
  readonly feed: FeedPlace | null;
  /** index of the last flighted station, -1 where none */
  readonly lastFlight: number;
  /** free volume swept per turn where the last flight ends, m³: the scale of any flow */
  readonly sweptPerTurn: number;
}

/**
 * Builds the machine of a design, with the walls of standstill.
 * @param stationsPerTurn stations per turn of lead, >= 4
 */
export function createMachine(design: Design, stationsPerTurn: number): Machine {
  const stations = buildStations(design, stationsPerTurn);
  const walls = wallTemperatures(design);
  const lastFlight = stations.flighted.lastIndexOf(1);
  return {
    design,
    stations,
    channel: createChannel(stations, design.screw.radialClearance, indexOver(design)),
    head: createHead(headElements(design)),
    walls,
    wallAt: wallsAt(stations, walls),
    heaters: unknownHeaters,
    feed: feedPlace(design, stations),
    lastFlight,
    sweptPerTurn: lastFlight < 0 ? 0 : stations.freeArea[lastFlight] * stations.lead[lastFlight],
  };
}

/** The machine with other wall temperatures, as under load. */
export const withWalls = (machine: Machine, walls: WallTemperatures): Machine => ({
  ...machine,
  walls,
  wallAt: wallsAt(machine.stations, walls),
});

function wallsAt(stations: Stations, walls: WallTemperatures): Machine['wallAt'] {
  const at = (values: Float64Array) => stations.z.map((z) => interpolateLinear(walls.z, values, z));
  return { barrel: at(walls.barrel), screw: at(walls.screw) };
}

/** Local power-law index over channel depth, at the set speed and the nozzle's temperature. */
function indexOver(design: Design): (depth: number) => number {
  const { material, nozzle, barrel, process, drive } = design;
  const law = material.viscosityLaw(Math.max(nozzle.setTemperature, material.melting), 0);
  const barrelSpeed = Math.PI * barrel.boreDiameter * Math.min(process.screwSpeed, highestScrewSpeed(drive));
  return (depth) => localIndex(law, barrelSpeed / depth);
}
