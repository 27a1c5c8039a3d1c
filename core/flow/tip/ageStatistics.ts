/** How much of the melt is how old. */

import type { TriMesh } from '../../math/triMesh.ts';
import { POINT_COUNT } from '../../math/triQuadrature.ts';
import { fieldAt, outletPoints } from './edgeRule.ts';
import { newPointShapes, pointShapes } from './pointShapes.ts';
import type { StokesState } from './stokesState.ts';

/** Ages by volume and at the outlet. */
export interface AgeStatistics {
  /** V/Q, s */
  readonly meanTime: number;
  /** Flow-weighted age at the outlet, s */
  readonly outletMean: number;
  /** Volume mean of the age, s */
  readonly volumeMean: number;
  /** Largest nodal age, s */
  readonly oldest: number;
  /** Share of the volume older than 3, 5 and 10 times V/Q */
  readonly fractionOver3: number;
  readonly fractionOver5: number;
  readonly fractionOver10: number;
}

/** One sample of a distribution over time. */
export interface ResidenceSample {
  /** s */
  readonly time: number;
  /** Share of the outflow that is younger */
  readonly fraction: number;
}

/** Visits quadrature points with the local age, position and volume (2 pi included, m3). */
export function eachAgePoint(
  mesh: TriMesh,
  age: Float64Array,
  visit: (t: number, age: number, volume: number) => void,
): void {
  const point = newPointShapes();
  for (let t = 0; t < mesh.triangleCount; t++)
    for (let q = 0; q < POINT_COUNT; q++) {
      pointShapes(mesh, t, q, point);
      let value = 0;
      for (let a = 0; a < 6; a++) value += point.value[a] * age[mesh.nodes[6 * t + a]];
      visit(t, value, 2 * Math.PI * point.weight);
    }
}

/** Volume of a mesh turned about the axis, m3. */
export function meshVolume(mesh: TriMesh): number {
  let volume = 0;
  eachAgePoint(mesh, new Float64Array(mesh.x.length), (_t, _age, v) => {
    volume += v;
  });
  return volume;
}

/**
 * Statistics of an age field.
 * @param flow volume flow, m3/s
 */
export function ageStatistics(mesh: TriMesh, state: StokesState, age: Float64Array, flow: number): AgeStatistics {
  const meanTime = meshVolume(mesh) / flow;
  const over = [3, 5, 10].map((times) => ({ limit: times * meanTime, volume: 0 }));
  let volume = 0;
  let weighted = 0;
  eachAgePoint(mesh, age, (_t, value, v) => {
    volume += v;
    weighted += v * value;
    for (const bin of over) if (value > bin.limit) bin.volume += v;
  });
  const outlet = outletPoints(mesh, state);
  const out = outlet.reduce((sum, point) => sum + point.flow * fieldAt(mesh, age, point), 0);
  const through = outlet.reduce((sum, point) => sum + point.flow, 0);
  const [fractionOver3, fractionOver5, fractionOver10] = over.map((bin) => bin.volume / volume);
  return {
    ...{
      meanTime,
      outletMean: out / through,
      volumeMean: weighted / volume,
      fractionOver3,
      fractionOver5,
      fractionOver10,
    },
    oldest: age.reduce((most, value) => Math.max(most, value), 0),
  };
}

/**
 * Residence time distribution of the outflow: the outlet's points sorted by age, each weighted by its flow.
 * @returns F at rising times; the middle of each point's own step
 */
export function outletResidence(mesh: TriMesh, state: StokesState, age: Float64Array): ResidenceSample[] {
  const points = outletPoints(mesh, state)
    .map((point) => ({ time: Math.max(0, fieldAt(mesh, age, point)), flow: Math.max(0, point.flow) }))
    .sort((a, b) => a.time - b.time);
  const total = points.reduce((sum, point) => sum + point.flow, 0);
  let passed = 0;
  return points.map(({ time, flow }) => {
    passed += flow;
    return { time, fraction: (passed - flow / 2) / total };
  });
}
