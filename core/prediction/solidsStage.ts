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

/**
 * Granules of a machine at a state.
 * @param volumeFlow melt that comes out, m³/s
 * The plug holds what pressure the melt has where it begins: none where the screw runs partly empty.
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
    { meltPressure: Math.max(0, state.march.startPressure), softensAt: state.melt.softensAt },
  );
}
