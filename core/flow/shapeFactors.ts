/** Finite-width factors of a rectangular channel: how much the side walls hold back drag and pressure flow. */

/** Slope of F_d at ratio 0, 14 zeta(3)/pi³; the next terms are of the order exp(-pi/ratio). */
const dragSlope = (14 * 1.2020569031595942) / Math.PI ** 3;

/**
 * Factor of the Newtonian drag flow, F_d, against the infinitely wide channel.
 * @param ratio depth over width H/W, > 0
 * @returns 0 to 1; exactly 1/2 for the square channel
 * Source: Rowell & Finlayson 1928; Tadmor & Klein 1970. Holds for square corners and no clearance.
 */
export function dragShapeFactor(ratio: number): number {
  if (!(ratio > 1e-9)) return 1;
  if (ratio < 0.1) return 1 - dragSlope * ratio;
  let sum = 0;
  for (let i = 1; i < 200; i += 2) sum += Math.tanh((i * Math.PI * ratio) / 2) / i ** 3;
  // beyond, tanh has saturated and the sum of odd 1/i³ is its integral
  const tail = 1 / (4 * 200 ** 2);
  return (16 / (Math.PI ** 3 * ratio)) * (sum + tail);
}

/**
 * Factor of the Newtonian pressure flow, F_p, against the infinitely wide channel.
 * @param ratio depth over width H/W, > 0
 * @returns 0 to 1; three times the torsion constant of the rectangular bar (membrane analogy)
 * Source: Rowell & Finlayson 1928; Timoshenko & Goodier 1951 for the analogy.
 */
export function pressureShapeFactor(ratio: number): number {
  if (!(ratio > 1e-9)) return 1;
  let sum = 0;
  for (let i = 1; i < 100; i += 2) sum += Math.tanh((i * Math.PI) / (2 * ratio)) / i ** 5;
  return 1 - ((192 * ratio) / Math.PI ** 5) * sum;
}

/**
 * Width factors of a melt that is not Newtonian: the side walls hold back a shear-thinning melt more.
 * @param ratio depth over width H/W, 0 to 1
 * @param index local power-law index at the channel's shear rate, 0.2 to 1.2
 * @returns the Newtonian factors for index 1
 * Source: own fit, 1 - F grows by 1 + c (1/n - 1)(1 - b (H/W)²), to finite-element solutions of the rectangular channel
 * with coupled cross flow at a lead of one bore, n = 0.3 and 0.5; see the test for the errors that remain.
 */
export function widthFactors(ratio: number, index: number): { readonly drag: number; readonly pressure: number } {
  const thinning = 1 / Math.max(0.2, Math.min(index, 1.5)) - 1;
  const wide = Math.min(ratio, 1) ** 2;
  const held = (factor: number, growth: number, fade: number) =>
    Math.max(0.02, 1 - (1 - factor) * (1 + growth * thinning * (1 - fade * wide)));
  return {
    drag: held(dragShapeFactor(ratio), 0.27, 0.4),
    pressure: held(pressureShapeFactor(ratio), 0.36, 0.35),
  };
}
