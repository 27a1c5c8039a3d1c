/** Granules ahead of the melt at a state of the machine. */

import { solidsState } from '../feed/solids.ts';
import type { SolidsState } from '../feed/solidsTypes.ts';
import type { FlowState } from './flowState.ts';
import type { Machine } from './machine.ts';

/** First station with melt; the last one where there is none. */
function meltStation({ stations }: Machine, { melt }: FlowState): number {
  const { meltsFrom } = melt;
  if (meltsFrom === null) return stations.count - 1;
  const at = stations.z.findIndex((z) => z >= meltsFrom);
  return at < 0 ? stations.count - 1 : at;
}

/** What the balance of screw and head leaves over for want of further iteration, as a share of the melt's pressures. */
const residue = 0.02;

/**
 * Pressure of the melt where it begins, Pa above ambient: what a plug must hold.
 * None at any flow that the melt can pump itself, so at every working point that is found: where pumping decides, the
 * balance is struck at no pressure there, and where something else does, the screw runs partly empty. What is left is
 * the remainder of an iteration unless it is large against the pressures that the channel makes and spends.
 */
function pressureToHold({ stations: { z } }: Machine, { march, headPressure }: FlowState): number {
  const made = march.flows.reduce((sum, flow, i) => sum + (flow ? Math.abs(flow.gradient) * (z[i + 1] - z[i]) : 0), 0);
  const { startPressure } = march;
  return startPressure > residue * Math.max(headPressure, made) ? startPressure : 0;
}

/**
 * Granules of a machine at a state.
 * @param volumeFlow melt that comes out, m³/s
 */
export function solidsAt(machine: Machine, state: FlowState, volumeFlow: number): SolidsState {
  const { design, stations, feed } = machine;
  return solidsState(
    design,
    stations,
    feed,
    volumeFlow * design.material.meltDensity,
    state.screwSpeed,
    meltStation(machine, state),
    { meltPressure: pressureToHold(machine, state), softensAt: state.melt.softensAt },
  );
}
