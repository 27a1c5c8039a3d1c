/**
 * ISO 2768-1:1989, permissible deviations, mm and degrees; null = to be stated at the dimension itself. Linear: as
 * reprinted in several shops' tables ("ISO 2768 pdf", "DIN ISO 2768" pages of a web index, which agree), the coarse value
 * for 3 to 6 mm being 0.3 in two of three. Radii and angles: the same pages and camcut-group.com; class v above 50 mm
 * from memory.
 */

/** The four tolerance classes: fine, medium, coarse, very coarse. */
export type ToleranceClass = 'f' | 'm' | 'c' | 'v';

/** Deviations (plus and minus) of nominal sizes above `above` up to `upTo`, mm. */
export interface ToleranceStep {
  readonly above: number;
  readonly upTo: number;
  readonly f: number | null;
  readonly m: number | null;
  readonly c: number | null;
  readonly v: number | null;
}

/** Lengths and diameters, mm; the first step begins at 0.5 mm itself. */
export const linearSteps: readonly ToleranceStep[] = [
  { above: 0.5, upTo: 3, f: 0.05, m: 0.1, c: 0.2, v: null },
  { above: 3, upTo: 6, f: 0.05, m: 0.1, c: 0.3, v: 0.5 },
  { above: 6, upTo: 30, f: 0.1, m: 0.2, c: 0.5, v: 1 },
  { above: 30, upTo: 120, f: 0.15, m: 0.3, c: 0.8, v: 1.5 },
  { above: 120, upTo: 400, f: 0.2, m: 0.5, c: 1.2, v: 2.5 },
  { above: 400, upTo: 1000, f: 0.3, m: 0.8, c: 2, v: 4 },
  { above: 1000, upTo: 2000, f: 0.5, m: 1.2, c: 3, v: 6 },
  { above: 2000, upTo: 4000, f: null, m: 2, c: 4, v: 8 },
];

/** Angles by the length of their shorter leg; degrees. */
export const angularSteps: readonly ToleranceStep[] = [
  { above: 0, upTo: 10, f: 1, m: 1, c: 1.5, v: 3 },
  { above: 10, upTo: 50, f: 1 / 2, m: 1 / 2, c: 1, v: 2 },
  { above: 50, upTo: 120, f: 1 / 3, m: 1 / 3, c: 1 / 2, v: 1 },
  { above: 120, upTo: 400, f: 1 / 6, m: 1 / 6, c: 1 / 4, v: 1 / 2 },
  { above: 400, upTo: Number.POSITIVE_INFINITY, f: 1 / 12, m: 1 / 12, c: 1 / 6, v: 1 / 3 },
];
