/** Which fields of the description each figure is made from, by the labels they carry on screen; no numbers. */

import type { CapacityKind } from '../prediction/types.ts';
import { type PrintTopicId, printTopicOf } from './printTopics.ts';

/** Parts of the description. */
export type InputPartId =
  | 'granulate'
  | 'screw'
  | 'tip'
  | 'barrel'
  | 'nozzle'
  | 'hopper'
  | 'drive'
  | 'running'
  | 'print';

/** Fields of one part that matter for a figure. */
export interface FigureInput {
  readonly part: InputPartId;
  readonly fields: readonly string[];
}

const from = (part: InputPartId, ...fields: readonly string[]): FigureInput => ({ part, fields });

const turns = ['Lead start', 'Lead end', 'Root Ø start', 'Root Ø end', 'Starts', 'Flight land'];
const thermal = ['Heat conductivity', 'Heat capacity, solid', 'Heat capacity, melt', 'Heat of fusion', 'Flows at'];
const channel = from('screw', ...turns, 'Flank angle', 'Flight clearance');
const bore = from('barrel', 'Bore Ø');
const zones = from('barrel', 'Bore Ø', 'Outer Ø', 'Heat conductivity', 'Zones along the barrel', 'Heat break');
const pieces = from('nozzle', 'Pieces in the direction of flow', 'Set temperature');
const run = from('running', 'Screw speed', 'Pressure after the orifice');
const melt = from('granulate', 'Melt flow', 'Melt density');
const motor = from('drive', 'Motor torque over speed', 'Gear ratio', 'Gear efficiency', 'Usable share of torque');
const steps = from('drive', 'Gear ratio', 'Full steps per turn', 'Microsteps');
const line = from('print', 'Line width', 'Layer height', 'Laying speed');
const friction = from('granulate', 'Bulk density', 'Friction on barrel', 'Friction on screw');
const opening = from('barrel', 'Bore Ø', 'Feed opening');
const pumping = [melt, channel, from('tip', 'Shape'), bore, pieces, run];
const carrying = [friction, channel, opening, from('hopper', 'Outlet Ø', 'Wall angle from vertical', 'Agitation')];
const heating = [from('granulate', ...thermal), from('screw', 'Heat conductivity'), zones];
const heaters = from('nozzle', 'Set temperature', 'Heater power');
const air = from('running', 'Screw speed', 'Granulate temperature', 'Room temperature');
const loads = [melt, friction, channel, bore, pieces, motor, run];
const sizes = ['Grain d10', 'Grain d50', 'Grain d90'];

const capacityInputs: Readonly<Record<CapacityKind, readonly FigureInput[]>> = {
  pumping,
  feed: [...carrying, from('running', 'Screw speed')],
  starved: [from('running', 'Feeding', 'Feeder rate'), from('granulate', 'Melt density')],
  torque: loads,
  motorSpeed: [motor, run],
  heater: [...heating, heaters, air],
  melting: [from('granulate', ...sizes, 'Melt flow'), ...heating, channel, air],
  grainFit: [from('granulate', ...sizes), channel, opening, from('hopper', 'Outlet Ø')],
};

const printInputs: Readonly<Record<PrintTopicId, readonly FigureInput[]>> = {
  demand: [line, from('print', 'Travel share', 'Idle share'), ...pumping],
  line: [
    from('print', 'Line width', 'Layer height', 'Wall thickness'),
    from('nozzle', 'Pieces in the direction of flow'),
  ],
  strand: [
    from('granulate', 'Surface tension', 'Melt density', 'Melt flow'),
    from('nozzle', 'Pieces in the direction of flow', 'Set temperature'),
    from('print', 'Nozzle height'),
  ],
  release: [from('granulate', 'Compressibility of the melt', 'Melt flow'), channel, bore, pieces, run],
  cooling: [
    from('granulate', ...thermal, 'Sets at', 'Stiffness (Young)', 'Strength', 'Heat expansion', 'Poisson ratio'),
    from('print', 'Line width', 'Layer height', 'Bed temperature', 'Air at the print', 'Cooling by the air'),
  ],
  controller: [
    steps,
    from('print', 'Virtual filament Ø'),
    from('granulate', 'Compressibility of the melt'),
    ...pumping,
  ],
};

const groupInputs: Readonly<Record<string, readonly FigureInput[]>> = {
  output: pumping,
  residence: pumping,
  colour: [from('granulate', 'Aging', 'Melt flow'), zones, pieces, run],
  feeding: [from('granulate', ...sizes, 'Cohesion'), ...carrying, from('running', 'Feeding', 'Screw speed')],
  melting: capacityInputs.melting,
  drive: [
    ...loads,
    from('screw', 'Yield strength', 'Stiffness (Young)', 'Root fillet'),
    from('drive', 'Axial bearing'),
  ],
  heat: capacityInputs.heater,
  coldEnd: [from('granulate', 'Softens at'), ...heating, from('barrel', 'Feed opening'), air],
  warmUp: [...heating, from('barrel', 'Heat capacity'), heaters, from('running', 'Room temperature')],
  nozzle: [melt, pieces, run],
  geometry: [channel, from('tip', 'Shape'), bore, pieces],
  making: [from('screw', 'Flight clearance'), bore, from('tip', 'Shank'), from('barrel', 'Zones along the barrel')],
};

/** Each part once, each of its fields once. */
function merged(inputs: readonly FigureInput[]): FigureInput[] {
  const parts = new Map<InputPartId, Set<string>>();
  for (const { part, fields } of inputs) parts.set(part, new Set([...(parts.get(part) ?? []), ...fields]));
  return [...parts].map(([part, fields]) => ({ part, fields: [...fields] }));
}

/**
 * Fields that matter for a figure.
 * @param groupId id of its group; @param rowId its id in the group
 * @returns each part once; empty where it is not made from fields
 */
export function figureInputs(groupId: string, rowId: string): FigureInput[] {
  if (groupId === 'capacities') return merged(capacityInputs[rowId as CapacityKind] ?? []);
  if (groupId === 'print') return merged(printInputs[printTopicOf(rowId)]);
  return merged(groupInputs[groupId] ?? []);
}
