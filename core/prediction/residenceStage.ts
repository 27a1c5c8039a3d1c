/** How long the melt stays, and how much of its volume lingers. */

import type { GeometrySummary } from '../geometry/types.ts';
import { localIndex } from '../material/viscosityLaw.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import { meanTime } from '../residence/atoms.ts';
import { channelAtoms, pipeAtoms } from '../residence/channel.ts';
import { joinResidence } from '../residence/combine.ts';
import { pintoTadmorOlder } from '../residence/pintoTadmor.ts';
import { deadBasis, residenceBasis, withDoubt } from './bases.ts';
import { type FlowState, flowingTemperature } from './flowState.ts';
import type { Machine } from './machine.ts';
import { partCurves } from './partCurves.ts';
import type { Basis, DeadVolume, Residence } from './types.ts';

/** Melt volumes of the parts, m³. */
export interface MeltVolumes {
  readonly channel: number;
  readonly tip: number;
  readonly nozzle: number;
}

/** Melt in the channel as far as it is molten and filled, and in the whole head. */
export function meltVolumes(machine: Machine, state: FlowState, geometry: GeometrySummary): MeltVolumes {
  const { freeVolume } = machine.stations;
  const { start } = state.melt;
  let channel = 0;
  for (let i = start.reach; i < state.march.fill.length; i++) {
    const share = i === start.reach ? start.share : 1;
    channel += (freeVolume[i + 1] - freeVolume[i]) * state.march.fill[i] * share;
  }
  return { channel, tip: geometry.tipVolume, nozzle: geometry.nozzleVolume };
}

/**
 * Residence of the melt.
 * @param volumeFlow m³/s; 0 gives zeros and empty curves with a doubt
 */
export function residenceStage(
  machine: Machine,
  state: FlowState,
  volumes: MeltVolumes,
  volumeFlow: number,
): Residence & { readonly basis: Basis } {
  if (!(volumeFlow > 0)) {
    const basis = withDoubt(residenceBasis, ['Nothing flows, so there is no residence time.']);
    const none = {
      mean: 0,
      min: 0,
      t50: 0,
      t95: 0,
      t99: 0,
      washout99: 0,
      washout999: 0,
      time: new Float64Array(),
      cumulative: new Float64Array(),
    };
    return { ...none, parts: partsOf(volumes, 0), basis };
  }
  const channel = channelAtoms(volumes.channel / volumeFlow);
  const head = pipeAtoms((volumes.tip + volumes.nozzle) / volumeFlow, headIndex(machine, state, volumes, volumeFlow));
  const atoms = meanTime(channel) > 0 ? [channel, head] : [head];
  const joined = joinResidence([channel, head]);
  const slow = state.march.filledLength < 0.5 * moltenLength(machine, state);
  const basis = withDoubt(residenceBasis, [
    slow && 'More than half of the molten channel runs partly filled; there the closed form is only a guess.',
    meanTime(channel) === 0 && 'The granules are not molten before the flights end.',
  ]);
  const washout999 = interpolateLinear(joined.cumulative, joined.time, 0.999);
  const parts = partsOf(volumes, 1 / volumeFlow);
  return { ...joined, washout99: joined.t99, washout999, parts, partCurves: partCurves(atoms), basis };
}

function partsOf(volumes: MeltVolumes, perFlow: number): Residence['parts'] {
  return (['channel', 'tip', 'nozzle'] as const).map((part) => ({
    part,
    mean: volumes[part] * perFlow,
    volume: volumes[part],
  }));
}

function moltenLength(machine: Machine, state: FlowState): number {
  const { z, count } = machine.stations;
  return z[count - 1] - z[Math.min(state.melt.start.reach, count - 1)];
}

/** Local power-law index at the wall of a pipe with the head's volume and length. */
function headIndex(machine: Machine, state: FlowState, volumes: MeltVolumes, volumeFlow: number): number {
  const { material } = machine.design;
  const length = state.head.elements.reduce(
    (sum, { element }) => sum + (element.kind === 'piece' ? element.length : 0),
    1e-6,
  );
  const area = Math.max((volumes.tip + volumes.nozzle) / length, 1e-12);
  const rate = (4 * volumeFlow) / (Math.PI * (area / Math.PI) ** 1.5);
  const law = material.viscosityLaw(flowingTemperature(material, machine.walls.nozzleTemperature), 0);
  return Math.max(0.1, localIndex(law, Math.max(rate, 1e-6)));
}

/**
 * Share of the melt volume older than three and five times the mean.
 * @returns shares of the whole melt volume; only the channel contributes in this version
 */
export function deadStage(volumes: MeltVolumes): DeadVolume {
  const total = volumes.channel + volumes.tip + volumes.nozzle;
  const inChannel = total > 0 ? volumes.channel / total : 0;
  return {
    fractionOver3: pintoTadmorOlder(3) * inChannel,
    fractionOver5: pintoTadmorOlder(5) * inChannel,
    spots: [],
    basis: withDoubt(deadBasis),
  };
}
