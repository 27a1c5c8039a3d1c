/** Colour of the extrudate from its residence and its temperatures. */

import { predictColour } from '../age/colour.ts';
import type { HeatSegment } from '../age/kinetics.ts';
import { type FlowState, flowingTemperature } from './flowState.ts';
import type { Machine } from './machine.ts';
import type { ColourPrediction, Residence } from './types.ts';

/** Mean time and temperature of channel, tip and nozzle, in order of passing. */
export function meltHeat(machine: Machine, state: FlowState, residence: Residence): HeatSegment[] {
  const { material } = machine.design;
  const { count } = machine.stations;
  const { temperature, start } = state.melt;
  const molten = temperature.subarray(Math.min(start.reach + 1, count - 1));
  const mean = molten.reduce((sum, value) => sum + value, 0) / molten.length;
  const at = {
    channel: flowingTemperature(material, mean),
    tip: flowingTemperature(material, temperature[count - 1]),
    nozzle: flowingTemperature(material, machine.walls.nozzleTemperature),
  };
  return residence.parts
    .filter((part) => part.mean > 0)
    .map((part) => ({ duration: part.mean, temperature: at[part.part] }));
}

/** Colour, or the reason why it cannot be said. */
export function colourStage(machine: Machine, state: FlowState, residence: Residence): ColourPrediction {
  return predictColour(
    machine.design.material,
    { time: residence.time, cumulative: residence.cumulative },
    meltHeat(machine, state, residence),
  );
}
