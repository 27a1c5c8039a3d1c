import { expect, test } from 'vitest';
import { flatRows, helicalRows, type Jet, ROWS } from '../../../../core/flow/field/strainRows.ts';

const jet = (part: Partial<Jet>): Jet => ({ f: 0, fx: 0, fy: 0, fxx: 0, fxy: 0, fyy: 0, ...part });

/** Shear rate of a stream function and a speed at one point of a helical channel. */
function helicalRate(psi: Jet, w: Jet, r: number, k: number): number {
  const [a, b] = [new Float64Array(2 * ROWS), new Float64Array(2 * ROWS)];
  helicalRows(psi, r, k, a);
  helicalRows(w, r, k, b);
  return Math.hypot(...Array.from({ length: ROWS }, (_, m) => a[m] + b[ROWS + m]));
}

const [r, k] = [1.7, 0.9];

test('turning as a rigid body has no shear rate: u_theta = r, psi = -r^2 / (2 k)', () => {
  const psi = jet({ f: (-r * r) / (2 * k), fy: -r / k, fyy: -1 / k });
  expect(helicalRate(psi, jet({ f: r, fy: 1 }), r, k)).toBeCloseTo(0, 12);
});

test('moving along the axis as a rigid body has no shear rate: u_z = 1, psi = r^2 / 2', () => {
  expect(helicalRate(jet({ f: (r * r) / 2, fy: r, fyy: 1 }), jet({}), r, k)).toBeCloseTo(0, 12);
});

test('flow between turning cylinders has the textbook shear rate: u_theta = 1 / r gives 2 / r^2', () => {
  // u_z = psi_r / r + u_theta / (k r) = 0, so psi_r = -u_theta / k
  const psi = jet({ fy: -1 / (k * r), fyy: 1 / (k * r * r) });
  expect(helicalRate(psi, jet({ f: 1 / r, fy: -1 / (r * r) }), r, k)).toBeCloseTo(2 / (r * r), 12);
});

test('axial flow u_z = ln r has shear rate 1 / r', () => {
  const psi = jet({ fy: r * Math.log(r), fyy: Math.log(r) + 1 });
  expect(helicalRate(psi, jet({}), r, k)).toBeCloseTo(1 / r, 12);
});

test('straight channel: plane stretching u = x, v = -y has shear rate 2, from psi = x y', () => {
  const out = new Float64Array(2 * ROWS);
  flatRows(jet({ fxy: 1 }), out);
  expect(Math.hypot(...out.subarray(0, ROWS))).toBeCloseTo(2, 12);
});

test('straight channel: simple shear w = 3 y has shear rate 3', () => {
  const out = new Float64Array(2 * ROWS);
  flatRows(jet({ fy: 3 }), out);
  expect(Math.hypot(...out.subarray(ROWS))).toBeCloseTo(3, 12);
});
