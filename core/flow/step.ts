/** Pressure lost at a sudden step of the bore. */

import { monotoneCurve } from '../age/monotoneCurve.ts';
import { localIndex, type ViscosityLaw } from '../material/viscosityLaw.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import { pipeFlow } from './pipe.ts';
import { stepTable } from './stepTable.ts';

/**
 * Entrance (or exit) loss of a sudden step of the bore, in excess of the developed flow on both sides.
 * @param wideRadius, narrowRadius m
 * @param volumeFlow m³/s, >= 0
 * @returns Pa; the tabulated length of narrow pipe at its wall stress. The melt's local index at the narrow wall stands
 * for the whole step, held to 0.2 to 1. Widening costs the same: creeping Newtonian flow can be reversed; for
 * shear-thinning melt that is an approximation. Elastic extra pressure is not included.
 * Source: stepTable.
 */
export function stepPressureDrop(
  law: ViscosityLaw,
  wideRadius: number,
  narrowRadius: number,
  volumeFlow: number,
): number {
  const { apparentRate, wallRate, wallStress } = pipeFlow(law, narrowRadius, volumeFlow);
  if (!(apparentRate > 0)) return 0;
  return 2 * wallStress * stepLength(localIndex(law, wallRate), narrowRadius / wideRadius);
}

/**
 * Length of narrow pipe, over its radius, that costs as much as the step.
 * @param index power-law index, held to 0.2 to 1
 * @param ratio narrow over wide radius, 0 to 1
 * @returns linear between the indexes, monotone cubic between the ratios
 */
export function stepLength(index: number, ratio: number): number {
  const perIndex = stepTable.index.map((own, i) =>
    ratio < stepTable.ratio[0] ? towardsReservoir(own, stepTable.length[i], ratio) : curves[i](ratio),
  );
  return interpolateLinear(stepTable.index, perIndex, index);
}

/** The table's rows over the ratio. */
const curves = stepTable.length.map((lengths) => monotoneCurve(stepTable.ratio, lengths));

/** Below the table: what a wider reservoir adds falls off as r^(3n), the stress of flow towards a point, at most as r. */
function towardsReservoir(index: number, lengths: readonly number[], ratio: number): number {
  const [near, next] = [0, 1].map((i) => stepTable.ratio[i] ** Math.min(1, 3 * index));
  const slope = (lengths[1] - lengths[0]) / (next - near);
  return lengths[0] + slope * (ratio ** Math.min(1, 3 * index) - near);
}
