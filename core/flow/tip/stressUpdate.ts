/** Moves the linearisation of the melt's law to the latest velocity. */

import { type ViscosityLaw, viscosityAt } from '../../material/viscosityLaw.ts';
import { POINT_COUNT, SHAPE_COUNT } from '../../math/triQuadrature.ts';
import { type CurvePoint, moveToStress, slopeAt } from '../lawInverse.ts';
import { type ElementContext, newElementWork } from './stokesElement.ts';
import { gatherVelocity, STRAIN_SIZE, type StokesState } from './stokesState.ts';
import { linearStress, strainAt } from './strain.ts';

const LEAST_RATE = 1e-9; // of the nominal rate; keeps logarithmic slopes finite at rest

function norm(v: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < STRAIN_SIZE; i++) sum += v[i] * v[i];
  return Math.sqrt(sum);
}

/** The law's own stress at the strain. */
function setFromStrain(law: ViscosityLaw, state: StokesState, point: number, e: Float64Array, rate: number): void {
  const eta = viscosityAt(law, rate);
  state.curve[2 * point] = eta;
  state.curve[2 * point + 1] = slopeAt(law, rate, eta);
  for (let i = 0; i < STRAIN_SIZE; i++) state.stress[STRAIN_SIZE * point + i] = eta * e[i];
}

const mark: CurvePoint = { stress: 1, rate: 1, slope: 1, bend: 0 };

function setFromStress(
  law: ViscosityLaw,
  state: StokesState,
  point: number,
  stress: Float64Array,
  size: number,
  rate: number,
): void {
  mark.rate = rate;
  mark.stress = viscosityAt(law, rate) * rate;
  mark.slope = 1;
  mark.bend = 0;
  moveToStress(law, size, mark);
  state.curve[2 * point] = size / mark.rate;
  state.curve[2 * point + 1] = mark.slope;
  state.stress.set(stress, STRAIN_SIZE * point);
}

/**
 * New stress at every quadrature point: the linearised one, unless the law gives less at the new strain. The smaller
 * stress is safe either way: a concave curve lies below its tangent, and where melt comes to rest the stress is known
 * long before the strain.
 * @param nominalRate 1/s, only to keep away from zero
 * @param fromStrain true at the start, when there is no last stress
 */
export function updateStress(
  context: ElementContext,
  state: StokesState,
  law: ViscosityLaw,
  nominalRate: number,
  fromStrain: boolean,
): void {
  const { mesh, tables } = context;
  const { local, strain, stress } = newElementWork(state.components);
  const least = LEAST_RATE * nominalRate;
  for (let t = 0; t < mesh.triangleCount; t++) {
    gatherVelocity(mesh, t, state, local);
    for (let point = t * POINT_COUNT; point < (t + 1) * POINT_COUNT; point++) {
      const square = strainAt(tables, point * SHAPE_COUNT, state.components, local, strain);
      const rate = Math.max(least, Math.sqrt(square));
      if (!fromStrain) linearStress(state, point, strain, stress);
      const size = fromStrain ? Number.POSITIVE_INFINITY : norm(stress);
      if (size < viscosityAt(law, rate) * rate && size > 0) setFromStress(law, state, point, stress, size, rate);
      else setFromStrain(law, state, point, strain, rate);
    }
  }
}
