/** Finite-width factors of a rectangular channel: how much the side walls hold back drag and pressure flow. */

/** Terms of the series; tanh has saturated and 1/i³ fallen below 1e-8 of the sum. */
const terms = 400;

/**
 * Factor of the Newtonian drag flow, F_d, against the infinitely wide channel.
 * @param ratio depth over width H/W, > 0
 * @returns 0 to 1; exactly 1/2 for the square channel
 * Source: Rowell & Finlayson 1928; Tadmor & Klein 1970. Holds for square corners and no clearance.
 */
export function dragShapeFactor(ratio: number): number {
  if (!(ratio > 1e-9)) return 1;
  let sum = 0;
  for (let k = 0; k < terms; k++) {
    const i = 2 * k + 1;
    sum += Math.tanh((i * Math.PI * ratio) / 2) / i ** 3;
  }
  return (16 / (Math.PI ** 3 * ratio)) * (sum + dragTail(ratio));
}

/** Remainder of the drag series beyond the summed terms, with tanh taken at the first one left out. */
function dragTail(ratio: number): number {
  const first = 2 * terms + 1;
  return Math.tanh((first * Math.PI * ratio) / 2) / (4 * (first - 1) ** 2);
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
