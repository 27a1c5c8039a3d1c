/**
 * Rates of deformation as linear combinations of the jets of two fields: the stream function psi of the cross flow and
 * the along-channel speed w. The shear rate g = sqrt(2 D:D) is the length of the vector of these rows.
 *
 * Straight channel: u = psi_y, v = -psi_x, w down-channel.
 * Helical channel (flow that repeats along a helix; x = z - theta / k axial, y radial, k = 2 pi / lead, all fields
 * functions of x and r): u_r = -psi_x / r, w = u_theta, u_z = psi_r / r + w / (k r), which satisfies
 * d(r u_r)/dr + d(r u_z - u_theta / k)/dx = 0 identically. Strain rates of cylindrical coordinates (Bird, Stewart &
 * Lightfoot 1960, appendix) with d/dz = d/dx and d/(r dtheta) = -d/(k r dx). D_rr + D_tt + D_zz = 0 folds the three
 * normal rates into two rows: 2 (D_rr^2 + D_tt^2 + D_zz^2) = 3 D_rr^2 + (D_tt - D_zz)^2.
 */

/** Rows per point; the flat channel leaves the last one zero. */
export const ROWS = 5;

/** Value and derivatives of one function in physical coordinates. */
export interface Jet {
  f: number;
  fx: number;
  fy: number;
  fxx: number;
  fxy: number;
  fyy: number;
}

/** Rows [2 psi_xy, psi_yy - psi_xx, w_x, w_y, 0]: the part of a function used as psi, then as w, into out[0..9]. */
export function flatRows(jet: Jet, out: Float64Array): void {
  out.fill(0);
  out[0] = 2 * jet.fxy;
  out[1] = jet.fyy - jet.fxx;
  out[ROWS + 2] = jet.fx;
  out[ROWS + 3] = jet.fy;
}

/**
 * Rows [sqrt3 D_rr, D_tt - D_zz, 2 D_rt, 2 D_rz, 2 D_tz] for a function used as psi (out[0..4]) and as w (out[5..9]).
 * @param r radius, > 0
 * @param k 2 pi / lead, same unit of length
 */
export function helicalRows(jet: Jet, r: number, k: number, out: Float64Array): void {
  const c = 1 / (k * r);
  out[0] = Math.sqrt(3) * (jet.fx / (r * r) - jet.fxy / r);
  out[1] = -jet.fx / (r * r) - jet.fxy / r;
  out[2] = (c * jet.fxx) / r;
  out[3] = (jet.fyy - jet.fxx) / r - jet.fy / (r * r);
  out[4] = (-c * jet.fxy) / r;
  out[5] = 0;
  out[6] = -2 * c * jet.fx;
  out[7] = jet.fy - jet.f / r;
  out[8] = c * (jet.fy - jet.f / r);
  out[9] = jet.fx * (1 - c * c);
}
