/** Breakpoints whose spacing grows away from places that need resolution. */

/** Wanted spacing of a graded line. */
export interface Grading {
  /** Cell size at the lower end, in the unit of the line. */
  readonly atStart: number;
  /** Cell size at the upper end. */
  readonly atEnd: number;
  /** Growth of the cell size per unit of distance from an end, > 0. */
  readonly growth: number;
  /** Largest cell size. */
  readonly largest: number;
}

/**
 * Breakpoints from 0 to length that share out the integral of 1 / (wanted cell size) equally.
 * @param length > 0
 * @returns increasing, first 0, last length exactly; at least two cells
 */
export function gradedBreaks(length: number, grading: Grading): Float64Array {
  // equal shares in a stretched variable: samples crowd where cells are small, so 400 resolve cell sizes to 1e-5
  const samples = 400;
  const place = (k: number) => (length * (1 - Math.cos((Math.PI * k) / samples))) / 2;
  const size = (x: number) =>
    Math.min(grading.largest, grading.atStart + grading.growth * x, grading.atEnd + grading.growth * (length - x));
  const total = new Float64Array(samples + 1);
  for (let k = 1; k <= samples; k++) {
    const width = place(k) - place(k - 1);
    total[k] = total[k - 1] + width / size((place(k) + place(k - 1)) / 2);
  }
  const cells = Math.max(2, Math.ceil(total[samples] - 1e-9));
  const breaks = new Float64Array(cells + 1);
  let k = 1;
  for (let i = 1; i < cells; i++) {
    const wanted = (total[samples] * i) / cells;
    while (total[k] < wanted) k++;
    const part = (wanted - total[k - 1]) / (total[k] - total[k - 1]);
    breaks[i] = place(k - 1) + part * (place(k) - place(k - 1));
  }
  breaks[cells] = length;
  return breaks;
}
