/** Fully developed pipe flow of any generalised Newtonian law. */

import { localIndex, type ViscosityLaw, viscosityAt } from '../material/viscosityLaw.ts';
import { gaussLegendre } from '../math/gaussLegendre.ts';

const rule = gaussLegendre(12);

/** What the wall of a pipe feels. */
export interface PipeFlow {
  /** pressure lost per length, Pa/m, same sign as the flow */
  readonly gradient: number;
  /** true wall shear rate, 1/s */
  readonly wallRate: number;
  /** wall shear stress, Pa */
  readonly wallStress: number;
  /** 4 Q/(pi R³), 1/s */
  readonly apparentRate: number;
}

/**
 * Pipe flow at a given volume flow.
 * @param law isothermal law
 * @param radius m, > 0
 * @param volumeFlow m³/s, >= 0
 * @returns relative error of the gradient about 1e-6 for indexes from 0.2
 * Source: Weissenberg-Rabinowitsch 1929 in rate form, Q = (pi R³/3)[g_w - (1/tau_w³) int_0^g_w tau³ dg].
 */
export function pipeFlow(law: ViscosityLaw, radius: number, volumeFlow: number): PipeFlow {
  const apparentRate = (4 * volumeFlow) / (Math.PI * radius ** 3);
  if (!(apparentRate > 0)) return { gradient: 0, wallRate: 0, wallStress: 0, apparentRate: 0 };
  const index = localIndex(law, apparentRate);
  let wallRate = (apparentRate * (3 * index + 1)) / (4 * index);
  // secant steps in logarithms: how the apparent rate answers the wall's changes slowly along a flow curve
  let [answer, step, miss] = [1, 0, 0];
  for (let pass = 0; pass < 30; pass++) {
    const before = miss;
    miss = Math.log(apparentRate / apparentOf(law, wallRate));
    if (step !== 0 && Math.abs(miss) < Math.abs(before)) answer = Math.max(0.5, Math.min(2, (before - miss) / step));
    step = miss / answer;
    wallRate *= Math.exp(step);
    if (Math.abs(step) < 1e-8) break;
  }
  const wallStress = viscosityAt(law, wallRate) * wallRate;
  return { gradient: (2 * wallStress) / radius, wallRate, wallStress, apparentRate };
}

/** 4 Q/(pi R³) that a true wall rate brings; the substitution g = g_w t³ tames the rise of tau³ at rest. */
function apparentOf(law: ViscosityLaw, wallRate: number): number {
  const wallStress = viscosityAt(law, wallRate) * wallRate;
  let sum = 0;
  for (let i = 0; i < rule.nodes.length; i++) {
    const t = rule.nodes[i];
    const rate = wallRate * t ** 3;
    const share = (viscosityAt(law, rate) * rate) / wallStress;
    sum += rule.weights[i] * share ** 3 * 3 * t * t;
  }
  return (4 / 3) * wallRate * (1 - sum);
}

/**
 * Share of the mean residence time after which the first melt leaves a pipe: mean over largest speed.
 * @param index power-law index, > 0
 * @returns (n + 1)/(3n + 1); 1/2 for Newtonian
 */
export const pipeFirstShare = (index: number): number => (index + 1) / (3 * index + 1);
