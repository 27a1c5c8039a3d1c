/** The flow that the heaters can warm, heater by heater: one weak zone limits though the watts of all together suffice. */

import type { Design } from '../design/types.ts';
import { bracketedRoot } from '../math/roots.ts';
import { enthalpyBetween, enthalpyOf } from './enthalpy.ts';
import { type CellCounts, type HeatCells, heatCells } from './heatCells.ts';
import { givenBy, underHeater } from './heaterBodies.ts';
import { type Load, type Stream, streamOver } from './stream.ts';
import { heldHeat } from './thermostats.ts';

/** A flow and what ends it. */
interface HeatedFlow {
  /** kg/s; Infinity where no flow is too much */
  readonly massFlow: number;
  /** name of the heater that gives in first, 'outlet' where what leaves is too cold, null where nothing limits */
  readonly limitedBy: string | null;
}

/** Flows that the heaters can warm. */
export interface HeaterCapacity {
  /** most at which every heater holds its set temperature; its first heater to give all it has */
  readonly holding: HeatedFlow;
  /** most at which, heaters giving all they have, no such zone is below melting and what leaves is as warm as wanted */
  readonly melting: HeatedFlow;
  readonly converged: boolean;
}

/** Cells of the search: what a heater needs comes within 1 % of that of fine cells. */
const searchCells: CellCounts = { barrel: 80, nozzle: 8 };

/** Share of the highest conceivable flow to which the search closes in. */
const closeness = 5e-4;

/**
 * Capacity of the heaters one by one.
 * @param load where heat is made; its mass flow does not matter, its watts and exchange are taken as they are at any flow
 * @param wanted temperature of what leaves, K, at least melting
 * Zones set below melting limit `holding` alone. The highest conceivable flow is that which all watts would just melt
 * without losses.
 */
export function heaterCapacity(
  design: Design,
  load: Load,
  wanted: number = design.material.melting,
  counts: CellCounts = searchCells,
): HeaterCapacity {
  const { material, process } = design;
  const cells = heatCells(design, counts);
  const laid = streamOver(design, cells, { ...load, massFlow: 0 });
  const made = laid.dissipation.reduce((sum, watts) => sum + watts, 0);
  const installed = cells.heaters.reduce((sum, { maxPower }) => sum + maxPower, 0);
  const rise = Math.max(1e3, enthalpyBetween(material, process.feedTemperature, Math.max(wanted, material.melting)));
  const most = Math.max(1e-9, (2 * (installed + made)) / rise);
  let converged = true;
  const search = (worst: (massFlow: number) => Shortfall, from: number): HeatedFlow => {
    if (worst(from).margin <= 0) return { massFlow: from, limitedBy: worst(from).name };
    if (worst(most).margin > 0) return { massFlow: Number.POSITIVE_INFINITY, limitedBy: null };
    const root = bracketedRoot((flow) => worst(flow).margin, from, most, { tolerance: closeness * most });
    converged &&= root.converged;
    return { massFlow: root.x, limitedBy: worst(Math.min(most, root.x + closeness * most)).name };
  };
  const holding = search((massFlow) => shortOfWatts(cells, { ...laid, massFlow }), 0);
  const melting = search(
    (massFlow) => shortOfHeat(cells, { ...laid, massFlow }, Math.max(wanted, material.melting)),
    Math.min(holding.massFlow, most),
  );
  return { holding, melting: holding.massFlow === Number.POSITIVE_INFINITY ? holding : melting, converged };
}

/** The tightest of several margins, and whose it is. */
interface Shortfall {
  readonly margin: number;
  readonly name: string | null;
}

const tightest = (all: readonly Shortfall[]): Shortfall =>
  all.reduce((worst, own) => (own.margin < worst.margin ? own : worst));

/** Watts that a heater has left when all hold, W. */
function shortOfWatts(cells: HeatCells, stream: Stream): Shortfall {
  const { state } = heldHeat(cells, stream, false);
  return tightest(
    cells.heaters.map((heater, k) => ({
      margin: heater.maxPower - Math.max(0, givenBy(heater, state.bodies[k], state.wall)),
      name: heater.name,
    })),
  );
}

/** Kelvins above melting of zones that give all they have, and above the wanted temperature of what leaves. */
function shortOfHeat(cells: HeatCells, stream: Stream, wanted: number): Shortfall {
  const { state, duties } = heldHeat(cells, stream);
  const { content } = stream;
  const weak = cells.heaters.filter(
    ({ setTemperature }, k) => duties[k] === 'weak' && setTemperature >= content.melting,
  );
  const above = state.enthalpy[cells.count - 1] - enthalpyOf(content, { temperature: wanted, fused: 1 });
  return tightest([
    ...weak.map((heater) => ({ margin: underHeater(heater, state.wall) - content.melting, name: heater.name })),
    { margin: stream.massFlow > 0 ? above / content.heatCapacityMelt : Number.POSITIVE_INFINITY, name: 'outlet' },
  ]);
}
