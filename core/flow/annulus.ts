/** Pressure flow through the ring between a turning core and a resting bore. */

import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { pipeFlow } from './pipe.ts';
import { type PlateFlow, type PlateSolver, solvePlate } from './plate.ts';

/** Core radius over bore radius below which the core no longer counts. */
const negligibleCore = 0.02;

/** Flow through a ring. */
export interface AnnulusFlow {
  /** pressure lost per length, Pa/m */
  readonly gradient: number;
  /** power the turning core puts in, per length, W/m */
  readonly swirlPower: number;
  /** mean shear rate over the gap; the wall rate where there is no core, 1/s */
  readonly shearRate: number;
  readonly converged: boolean;
}

/**
 * Ring with a turning core, as the flow between plates of the ring's mean circumference.
 * @param solver working memory
 * @param coreRadius, boreRadius m, bore larger
 * @param screwSpeed rev/s of the core
 * @param volumeFlow m³/s, >= 0
 * Curvature enters through the exact Newtonian annulus (Lamb 1932), so Newtonian flow is exact; for shear-thinning laws
 * it is within some per cent, the less the thinner the gap. Swirl lowers the viscosity through the shared shear rate.
 */
export function annulusFlow(
  solver: PlateSolver,
  law: ViscosityLaw,
  coreRadius: number,
  boreRadius: number,
  screwSpeed: number,
  volumeFlow: number,
): AnnulusFlow {
  if (coreRadius < negligibleCore * boreRadius) {
    const pipe = pipeFlow(law, boreRadius, volumeFlow);
    return { gradient: pipe.gradient, swirlPower: 0, shearRate: pipe.wallRate, converged: true };
  }
  const gap = boreRadius - coreRadius;
  const round = Math.PI * (boreRadius + coreRadius);
  const equivalent = (volumeFlow / round) * annulusToSlit(coreRadius / boreRadius);
  const surfaceSpeed = 2 * Math.PI * coreRadius * screwSpeed;
  const flow: PlateFlow = solvePlate(
    solver,
    law,
    gap,
    { wallSpeed: 0, given: 'flow', value: equivalent },
    { wallSpeed: surfaceSpeed, given: 'gradient', value: 0 },
  );
  return {
    gradient: -flow.down.gradient,
    swirlPower: flow.cross.lidStress * surfaceSpeed * 2 * Math.PI * coreRadius,
    shearRate: flow.shearRate,
    converged: flow.converged,
  };
}

/**
 * Newtonian pressure gradient of an annulus over that of the slit with its gap and mean circumference.
 * @param ratio core over bore radius, 0 < ratio < 1
 * @returns 2/3 towards 0, 1 towards 1
 * Source: Lamb 1932, annular Poiseuille flow.
 */
export function annulusToSlit(ratio: number): number {
  if (ratio > 0.98) return 1;
  const square = ratio * ratio;
  const exact = 8 / (Math.PI * (1 - square * square + (1 - square) ** 2 / Math.log(ratio)));
  const slit = 12 / (Math.PI * (1 + ratio) * (1 - ratio) ** 3);
  return exact / slit;
}
