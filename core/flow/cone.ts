/** Pressure lost in converging and diverging pieces of the bore. */

import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { gaussLegendre } from '../math/gaussLegendre.ts';
import { pipeFlow } from './pipe.ts';

const rule = gaussLegendre(8);

/**
 * Pressure drop of a tapering pipe as the sum of thin pipe slices (lubrication).
 * @param law isothermal law
 * @param startRadius, endRadius m; @param length m, > 0; @param volumeFlow m³/s
 * @returns Pa; right for slender cones
 */
export function lubricationDrop(
  law: ViscosityLaw,
  startRadius: number,
  endRadius: number,
  length: number,
  volumeFlow: number,
): number {
  const narrowing = Math.log(endRadius / startRadius);
  if (Math.abs(narrowing) < 1e-6) return pipeFlow(law, startRadius, volumeFlow).gradient * length;
  let sum = 0;
  // nodes even in ln r: the gradient is steep where the bore is narrow
  for (let i = 0; i < rule.nodes.length; i++) {
    const radius = startRadius * Math.exp(narrowing * rule.nodes[i]);
    sum += rule.weights[i] * pipeFlow(law, radius, volumeFlow).gradient * radius;
  }
  return (sum * narrowing * length) / (endRadius - startRadius);
}

/**
 * Pressure drop of a cone of any angle.
 * @returns Pa; the lubrication sum times the exact ratio of Newtonian flow in a cone of that angle to lubrication
 */
export function conePressureDrop(
  law: ViscosityLaw,
  startRadius: number,
  endRadius: number,
  length: number,
  volumeFlow: number,
): number {
  const slope = Math.abs(endRadius - startRadius) / length;
  return lubricationDrop(law, startRadius, endRadius, length, volumeFlow) * coneToLubrication(Math.atan(slope));
}

/**
 * Newtonian pressure drop of creeping flow in a cone over its lubrication estimate.
 * @param halfAngle rad, 0 to pi/2
 * @returns 1 for slender cones; finite times tan(halfAngle) towards the flat wall (where it gives 1.40 eta Q/R³)
 * Source: radial creeping flow in a cone (Harrison 1920; Happel & Brenner 1965), flow-weighted normal stress.
 */
export function coneToLubrication(halfAngle: number): number {
  if (halfAngle < 0.01) return 1; // the closed form cancels there
  const c = Math.cos(halfAngle);
  const b = c * c;
  const flux = (1 - c) ** 2 * (1 + 2 * c);
  const m0 = (1 - c ** 3) / 3 - b * (1 - c);
  const m2 = (1 - c ** 5) / 5 - (b * (1 - c ** 3)) / 3;
  const meanStress = (3 * m2) / m0 - 1 / 3 - 2 * b;
  const exact = ((3 / Math.PI) * meanStress * Math.sin(halfAngle) ** 3) / flux;
  return exact / (8 / (3 * Math.PI * Math.tan(halfAngle)));
}
