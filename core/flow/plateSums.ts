/** Sums over the gap that the plate solver's Newton step needs. */

import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import type { QuadratureRule } from '../math/gaussLegendre.ts';
import { type CurvePoint, moveToStress } from './lawInverse.ts';

/** Sums of the complementary energy's gradient and Hessian, in units of the scale rate and stress. */
export interface PlateSums {
  readonly rule: QuadratureRule;
  /** flow curve point of each node: the inverse law's next starting point */
  readonly points: readonly CurvePoint[];
  /** integral over the gap of the strain rate and of its moment, down then cross */
  readonly gradient: Float64Array;
  /** 4 x 4, row-major */
  readonly hessian: Float64Array;
  meanRate: number;
  work: number;
}

/** Empty sums for a quadrature rule across the gap. */
export function createPlateSums(rule: QuadratureRule): PlateSums {
  return {
    rule,
    points: Array.from(rule.nodes, () => ({ stress: 1, rate: 0, slope: 1, bend: 0 })),
    gradient: new Float64Array(4),
    hessian: new Float64Array(16),
    meanRate: 0,
    work: 0,
  };
}

/**
 * Evaluates the sums for given stresses.
 * @param sums filled
 * @param scales scale rate (1/s) and stress (Pa)
 * @param unknowns mean stress and slope, down then cross, in units of the scale stress; the coordinate runs -1/2 to 1/2
 * @param fresh true where the stored rates must not be used as starting points
 */
export function addPlateSums(
  sums: PlateSums,
  law: ViscosityLaw,
  scales: { readonly rate: number; readonly stress: number },
  unknowns: Float64Array,
  fresh: boolean,
): void {
  const { rule, points, gradient, hessian } = sums;
  gradient.fill(0);
  hessian.fill(0);
  sums.meanRate = 0;
  sums.work = 0;
  for (let i = 0; i < points.length; i++) {
    const s = rule.nodes[i] - 0.5;
    const down = unknowns[0] + unknowns[1] * s;
    const cross = unknowns[2] + unknowns[3] * s;
    const size = Math.max(Math.sqrt(down * down + cross * cross), 1e-9);
    const point = points[i];
    if (fresh || !(point.rate > 0)) restart(point, scales.rate * size, scales.stress * size);
    moveToStress(law, size * scales.stress, point);
    const rate = point.rate;
    const weight = rule.weights[i];
    const fluidity = rate / (size * scales.rate);
    // along the stress the fluid gives way by 1/slope, across it by the plain fluidity
    const extra = (fluidity * (1 / point.slope - 1)) / (size * size);
    sums.meanRate += (weight * rate) / scales.rate;
    sums.work += weight * fluidity * size * size;
    addNode(gradient, hessian, weight, s, down, cross, fluidity, extra);
  }
}

function restart(point: CurvePoint, rate: number, stress: number): void {
  point.rate = rate;
  point.stress = stress;
  point.slope = 1;
  point.bend = 0;
}

function addNode(
  gradient: Float64Array,
  hessian: Float64Array,
  weight: number,
  s: number,
  down: number,
  cross: number,
  fluidity: number,
  extra: number,
): void {
  gradient[0] += weight * fluidity * down;
  gradient[1] += weight * fluidity * down * s;
  gradient[2] += weight * fluidity * cross;
  gradient[3] += weight * fluidity * cross * s;
  const dd = weight * (fluidity + extra * down * down);
  const dc = weight * extra * down * cross;
  const cc = weight * (fluidity + extra * cross * cross);
  addBlock(hessian, 0, dd, s);
  addBlock(hessian, 2, dc, s);
  addBlock(hessian, 8, dc, s);
  addBlock(hessian, 10, cc, s);
}

function addBlock(hessian: Float64Array, at: number, value: number, s: number): void {
  hessian[at] += value;
  hessian[at + 1] += value * s;
  hessian[at + 4] += value * s;
  hessian[at + 5] += value * s * s;
}
