/** Warming of a single round grain whose surface is at once at the wall's temperature. */

/** Terms of the series; the last one counts below a Fourier number of 1e-4 only. */
const terms = 60;

/**
 * Share of the way to the surface's temperature at the centre of a sphere, 0 to 1.
 * @param fourier diffusivity x time / radius², >= 1e-3
 * Source: Carslaw & Jaeger 1959, section 9.3 (series, from memory).
 */
export function sphereCentre(fourier: number): number {
  let sum = 0;
  for (let n = 1; n <= terms; n++) sum += (n % 2 === 1 ? 2 : -2) * Math.exp(-((n * Math.PI) ** 2) * fourier);
  return Math.min(1, Math.max(0, 1 - sum));
}

/** The same of the mean over the sphere; fourier >= 0 within 1 %. */
export function sphereMean(fourier: number): number {
  let sum = 0;
  for (let n = 1; n <= terms; n++) sum += (6 / (n * Math.PI) ** 2) * Math.exp(-((n * Math.PI) ** 2) * fourier);
  return Math.min(1, Math.max(0, 1 - sum));
}

/** Fourier number at which the centre has gone a share of the way, 0.1 to 0.999: first term of the series. */
export const fourierForCentre = (share: number): number => Math.log(2 / (1 - share)) / Math.PI ** 2;

/**
 * Time until the centre of a grain has gone a share of the way, s.
 * @param diameter m; @param diffusivity m²/s; @param share 0.1 to 0.999
 */
export const grainTime = (diameter: number, diffusivity: number, share = 0.9): number =>
  (fourierForCentre(share) * (diameter / 2) ** 2) / diffusivity;
