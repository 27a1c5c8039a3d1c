/** Fixed coefficients of a half channel: the sliding barrel. */

import type { ChannelSpace } from './channelSpace.ts';

/** Dimensionless barrel motion: along-channel speed w, and psi_y, the cross speed (times r in a helical channel). */
export interface LidMotion {
  readonly along: number;
  readonly across: number;
}

/**
 * Lid of a space at unit barrel speed. In a helical channel u_z = psi_r / r + u_theta / (k r) = 0 on the barrel gives
 * psi_r = -1 / k.
 * @param helixAngle of a straight channel, rad; not used by a helical one, whose twist says it
 */
export function lidMotion(space: ChannelSpace, helixAngle: number): LidMotion {
  const { twist } = space.shape;
  if (twist > 0) return { along: 1, across: -1 / twist };
  return { along: Math.cos(helixAngle), across: Math.sin(helixAngle) };
}

/** Coefficients at rest except for the barrel; the jump at the flank is spread over the first cells along the barrel. */
export function liftedCoefficients(space: ChannelSpace, lid: LidMotion): Float64Array {
  const { across, up, size } = space;
  const coefs = new Float64Array(2 * size);
  const { knots, degree, count: ny } = up;
  // end slope of a clamped spline: degree (c_last - c_before) / (length of the last knot span)
  const reach = (knots[ny] - knots[ny - 1]) / degree;
  for (let i = 1; i < across.count; i++) {
    coefs[size + i * ny + ny - 1] = lid.along;
    if (i > 1) coefs[i * ny + ny - 2] = -lid.across * reach;
  }
  return coefs;
}
