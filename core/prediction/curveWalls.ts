/** Wall temperatures over screw speed: settled at a few speeds, straight between them. */

import type { HeatFlows } from '../heat/flows.ts';
import { type WallTemperatures, wallTemperatures } from '../heat/wallTemperature.ts';
import { loadOf } from './heatBalance.ts';
import { type Machine, withWalls } from './machine.ts';
import { type WorkingPoint, workingPoint } from './operating.ts';

/** Walls that belong to a speed, rev/s. */
interface Anchor {
  readonly screwSpeed: number;
  readonly walls: WallTemperatures;
}

/** Shares of the highest speed at which walls are settled, besides the working point. */
const anchorShares = [0.06, 0.25, 0.55, 1] as const;

/** Exchanges of flow and walls at each of them; walls change little after the second. */
const passes = 2;

/**
 * Machines with the walls of each speed.
 * @param machine with the walls of its working point
 * @param point working point
 * @param highest rev/s, of the drive
 * @returns the machine at a speed (rev/s); outside the settled speeds the nearest one's walls
 */
export function machineOverSpeed(machine: Machine, point: WorkingPoint, highest: number): (speed: number) => Machine {
  const anchors: Anchor[] = [{ screwSpeed: point.screwSpeed, walls: machine.walls }];
  // each speed starts from the walls of the one before: away from the working point, upwards, then downwards
  const speeds = anchorShares.map((share) => share * highest);
  const apart = speeds.filter((speed) => Math.abs(speed / point.screwSpeed - 1) > 0.02);
  for (const side of [apart.filter((s) => s > point.screwSpeed), apart.filter((s) => s < point.screwSpeed).reverse()]) {
    let from = machine;
    let { memory } = point;
    for (const screwSpeed of side) {
      for (let pass = 0; pass < passes; pass++) {
        const there = workingPoint(from, screwSpeed, memory);
        from = withWalls(from, wallTemperatures(from.design, loadOf(from, there.state, there.volumeFlow)));
        if (there.memory.volumeFlow > 0) memory = there.memory;
      }
      anchors.push({ screwSpeed, walls: from.walls });
    }
  }
  anchors.sort((a, b) => a.screwSpeed - b.screwSpeed);
  return (speed) => {
    const above = anchors.findIndex(({ screwSpeed }) => screwSpeed >= speed);
    const b = anchors[above < 0 ? anchors.length - 1 : above];
    const a = above > 0 ? anchors[above - 1] : b;
    if (a === b) return withWalls(machine, b.walls);
    return withWalls(machine, between(a.walls, b.walls, (speed - a.screwSpeed) / (b.screwSpeed - a.screwSpeed)));
  };
}

/** Walls a share of the way from a to b; what the heaters do is that of the nearer one. */
function between(a: WallTemperatures, b: WallTemperatures, share: number): WallTemperatures {
  const middle = (x: Float64Array, y: Float64Array) => x.map((value, i) => value + share * (y[i] - value));
  const near = share < 0.5 ? a : b;
  return {
    ...near,
    barrel: middle(a.barrel, b.barrel),
    screw: middle(a.screw, b.screw),
    nozzle: middle(a.nozzle, b.nozzle),
    nozzleTemperature: a.nozzleTemperature + share * (b.nozzleTemperature - a.nozzleTemperature),
    outlet: a.outlet + share * (b.outlet - a.outlet),
    flows: betweenFlows(a.flows, b.flows, share),
    wantedFlows: betweenFlows(a.wantedFlows, b.wantedFlows, share),
  };
}

const betweenFlows = (a: HeatFlows, b: HeatFlows, share: number): HeatFlows => {
  const at = (key: keyof HeatFlows) => a[key] + share * (b[key] - a[key]);
  return {
    heaters: at('heaters'),
    dissipation: at('dissipation'),
    product: at('product'),
    ambient: at('ambient'),
    coolant: at('coolant'),
    driveEnd: at('driveEnd'),
  };
};
