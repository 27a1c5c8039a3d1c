/**
 * Pressure lost at a sudden narrowing, beyond developed flow on both sides, as a length of the narrow pipe over its
 * radius: L/R = dp/(2 tau), tau = wall stress of developed flow in the narrow pipe.
 * Source: own solver of creeping axisymmetric flow (core/flow/tip) at fineness 0.8, pure power laws, straight pipes on
 * both sides long enough that the flow develops; converged solutions. Newtonian towards a wide reservoir: 3 pi/16 =
 * 0.589, half of a hole in a plate (Sampson 1891).
 */
export const stepTable = {
  /** narrow over wide radius, rising; at 1 there is no step */
  ratio: [0.1, 0.2, 0.4, 0.6, 0.8, 1],
  /** power-law index, rising */
  index: [0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1],
  /** L/R by index, then by ratio */
  length: [
    [2.1206, 1.7015, 1.0487, 0.5192, 0.0989, 0],
    [1.6561, 1.4074, 0.9317, 0.4867, 0.1093, 0],
    [1.3425, 1.1936, 0.8437, 0.4665, 0.1211, 0],
    [1.119, 1.0294, 0.771, 0.4504, 0.1319, 0],
    [0.9536, 0.8994, 0.7081, 0.4357, 0.1413, 0],
    [0.7275, 0.7075, 0.6021, 0.4067, 0.1564, 0],
    [0.5809, 0.5734, 0.5152, 0.3767, 0.1666, 0],
  ],
} as const;
