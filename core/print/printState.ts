/** Everything on the print side of one working point. */

import type { Design } from '../design/types.ts';
import { viscosityAt } from '../material/viscosityLaw.ts';
import { lineState } from './bead.ts';
import { coolingState } from './cooling.ts';
import { crackState } from './cracking.ts';
import { dripState } from './drip.ts';
import { firmwareNumbers } from './firmware.ts';
import { releaseState } from './ooze.ts';
import { strandState } from './strand.ts';
import type { PrintState } from './types.ts';

/** Shear rate of melt that hangs or drips, 1/s. */
const slowRate = 1;

/** What the screw hands to the print. SI, K. */
export interface PrintInputs {
  readonly screwSpeed: number;
  readonly volumeFlow: number;
  /** Pa, of the head; Pa s/m³ of nozzle, and of the stopped screw, null where unknown */
  readonly headPressure: number;
  readonly headResistance: number;
  readonly screwResistance: number | null;
  /** m³ that store, at the head's pressure, what all the melt under pressure stores */
  readonly storedVolume: number;
  /** melt above the orifice, m; melt at the orifice, K (at which the viscosity law may be asked) */
  readonly column: number;
  readonly outlet: number;
}

/** What the stored melt does after a stop. */
const releaseOf = ({ material, process }: Design, inputs: PrintInputs): PrintState['release'] =>
  releaseState({
    compressibility: material.meltCompressibility,
    volume: inputs.storedVolume,
    pressure: inputs.headPressure - process.backPressure,
    volumeFlow: inputs.volumeFlow,
    nozzleResistance: inputs.headResistance,
    screwResistance: inputs.screwResistance,
  });

/** How a line that leaves at a temperature, K, cools. */
const coolingOf = ({ material, print, process }: Design, outlet: number): PrintState['cooling'] =>
  coolingState({
    width: print.lineWidth,
    height: print.layerHeight,
    speed: print.speed,
    conductivity: material.conductivity,
    density: material.meltDensity,
    heatCapacity: material.heatCapacityMelt,
    heatOfFusion: material.heatOfFusion,
    outlet,
    setTemperature: material.mechanical?.setTemperature ?? null,
    air: print.chamberTemperature ?? process.ambient,
    coefficient: print.coolingCoefficient,
  });

/** Composes the parts; pure, plain data. */
export function printState(design: Design, inputs: PrintInputs): PrintState {
  const { material, nozzle, print, process, drive } = design;
  const bore = nozzle.segments[nozzle.segments.length - 1].endDiameter;
  const line = lineState(print.wallThickness, print.lineWidth, print.layerHeight, bore);
  const viscosity = viscosityAt(material.viscosityLaw(inputs.outlet, process.backPressure), slowRate);
  const { meltDensity: density, surfaceTension } = material;
  const release = releaseOf(design, inputs);
  return {
    line,
    firmware: firmwareNumbers(drive, {
      screwSpeed: inputs.screwSpeed,
      volumeFlow: inputs.volumeFlow,
      demand: line.area * print.speed,
      filamentDiameter: print.filamentDiameter,
      storedVolume: release.stored.value,
      advanceTime: release.time.value,
    }),
    release,
    drip: dripState({ column: inputs.column, density, surfaceTension, viscosity, segments: nozzle.segments }),
    strand: strandState({
      viscosity,
      density,
      surfaceTension,
      radius: bore / 2,
      volumeFlow: inputs.volumeFlow,
      gap: print.nozzleHeight,
    }),
    cooling: coolingOf(design, inputs.outlet),
    crack: crackState(material.mechanical, {
      bed: print.bedTemperature,
      chamber: print.chamberTemperature,
      ambient: process.ambient,
    }),
  };
}
