/** Stress concentration of a stepped round shaft in torsion. */

/** Factor taken for a sharp or unknown fillet; first-guess value of machine design texts, from memory. */
export const sharpFactor = 2.2;

/** Step over fillet up to which the fit was made, and at which a fillet counts as sharp (radius 0.02 of the shaft). */
const fitEnd = 4;
const sharpFrom = 12.5;

/**
 * Polynomial of the chart of stepped shafts in torsion, for step over fillet t/r up to 4.
 * @param ratio t/r; @param relative 2 t/D
 * Fit after Peterson's chart as given in handbooks of stress formulas (from memory); within 3 % of Gere's problem 3.11-3.
 */
function fitted(ratio: number, relative: number): number {
  const root = Math.sqrt(ratio);
  const c1 = 0.905 + 0.783 * root - 0.075 * ratio;
  const c2 = -0.437 - 1.969 * root + 0.553 * ratio;
  const c3 = 1.557 + 1.073 * root - 0.578 * ratio;
  const c4 = -1.061 + 0.171 * root + 0.086 * ratio;
  return c1 + relative * (c2 + relative * (c3 + relative * c4));
}

/**
 * Factor on the shear stress of the thinner shaft at a shoulder.
 * @param thick, thin diameters, m; no step where thick <= thin
 * @param fillet radius, m; null or 0 counts as sharp
 * @returns 1 to 2.2. Fit up to t/r = 4; from there on a line over ln(t/r) to 2.2 at t/r = 12.5, which meets a published
 * table (D/d 1.5: r/d 0.05 gives 1.7, 0.02 gives 2.2); below t/r = 0.25 the fit is extrapolated, never under 1.
 * Use it whole for brittle or fatigued metal; a ductile shaft under a single load evens it out.
 */
export function shoulderFactor(thick: number, thin: number, fillet: number | null): number {
  const step = (thick - thin) / 2;
  if (!(step > 0)) return 1;
  if (fillet === null || !(fillet > 0)) return sharpFactor;
  const ratio = step / fillet;
  const relative = (2 * step) / thick;
  const bounded = (value: number) => Math.min(sharpFactor, Math.max(1, value));
  if (ratio <= fitEnd) return bounded(fitted(ratio, relative));
  if (ratio >= sharpFrom) return sharpFactor;
  const from = bounded(fitted(fitEnd, relative));
  return from + ((sharpFactor - from) * Math.log(ratio / fitEnd)) / Math.log(sharpFrom / fitEnd);
}
