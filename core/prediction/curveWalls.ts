/** Wall temperatures of a curve over screw speed: each speed's are foreseen from those of the speeds before it. */

import type { HeatFlows } from '../heat/flows.ts';
import { type WallTemperatures, wallTemperatures } from '../heat/wallTemperature.ts';
import { loadOf } from './heatBalance.ts';
import { type Machine, withWalls } from './machine.ts';
import type { WorkingPoint } from './operating.ts';

/** Walls that belong to a speed, rev/s. */
interface Settled {
  readonly screwSpeed: number;
  readonly walls: WallTemperatures;
}

/** Walk along speeds that keeps the walls in step. */
export interface WallWalk {
  /** The machine with the walls foreseen at a speed, rev/s: straight on from the last two, or those of the last one. */
  ahead(screwSpeed: number): Machine;
  /** Takes in what was found at a speed. */
  learn(point: WorkingPoint): void;
}

/** Longest step ahead, over the step that it is foreseen from. */
const longestStep = 1.5;

/**
 * Starts a walk from the working point, whose walls the machine has. Second order in the step between speeds; the first
 * step, with one speed known, should be short or taken twice.
 */
export function wallWalk(machine: Machine, from: WorkingPoint): WallWalk {
  let before: Settled | null = null;
  let last: Settled = { screwSpeed: from.screwSpeed, walls: machine.walls };
  return {
    ahead(screwSpeed) {
      if (!before || before.screwSpeed === last.screwSpeed) return withWalls(machine, last.walls);
      const share = (screwSpeed - before.screwSpeed) / (last.screwSpeed - before.screwSpeed);
      return withWalls(machine, onward(before.walls, last.walls, Math.min(share, 1 + longestStep)));
    },
    learn(point) {
      const there = withWalls(machine, last.walls);
      const load = loadOf(there, point.state, point.volumeFlow);
      const walls = wallTemperatures(machine.design, load, undefined, last.walls);
      // a speed taken twice replaces what was known of it
      if (last.screwSpeed !== point.screwSpeed) before = last;
      last = { screwSpeed: point.screwSpeed, walls };
    },
  };
}

/** Walls on the straight line from a to b at a share of the way, beyond b above 1; the heaters do as in b. */
function onward(a: WallTemperatures, b: WallTemperatures, share: number): WallTemperatures {
  const at = (x: number, y: number) => x + share * (y - x);
  const all = (x: Float64Array, y: Float64Array) => x.map((value, i) => at(value, y[i]));
  const flows = (x: HeatFlows, y: HeatFlows): HeatFlows => ({
    heaters: at(x.heaters, y.heaters),
    dissipation: at(x.dissipation, y.dissipation),
    product: at(x.product, y.product),
    ambient: at(x.ambient, y.ambient),
    coolant: at(x.coolant, y.coolant),
    driveEnd: at(x.driveEnd, y.driveEnd),
  });
  return {
    ...b,
    barrel: all(a.barrel, b.barrel),
    screw: all(a.screw, b.screw),
    nozzle: all(a.nozzle, b.nozzle),
    nozzleTemperature: at(a.nozzleTemperature, b.nozzleTemperature),
    outlet: at(a.outlet, b.outlet),
    flows: flows(a.flows, b.flows),
    wantedFlows: flows(a.wantedFlows, b.wantedFlows),
  };
}
