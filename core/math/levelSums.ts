/** Sums of linear functions between the level lines of another linear function on triangles. */

/** Sums per band between neighbouring levels. */
export interface LevelSums {
  /** levels.length - 1 bands: plain area. */
  readonly area: Float64Array;
  /** Integral of the first weight. */
  readonly first: Float64Array;
  /** Integral of the second weight. */
  readonly second: Float64Array;
}

/** Empty sums for a number of bands. */
export function levelSums(bands: number): LevelSums {
  return { area: new Float64Array(bands), first: new Float64Array(bands), second: new Float64Array(bands) };
}

/** Corner of a triangle: level value and two weights. */
export interface Corner {
  readonly level: number;
  readonly first: number;
  readonly second: number;
}

/** Area and weights of a triangle below a level. */
function below(corners: readonly Corner[], area: number, level: number): [number, number, number] {
  const [a, b, c] = corners;
  if (level <= a.level) return [0, 0, 0];
  const whole: [number, number, number] = [
    area,
    (area * (a.first + b.first + c.first)) / 3,
    (area * (a.second + b.second + c.second)) / 3,
  ];
  if (level >= c.level) return whole;
  if (level <= b.level) return tip(a, b, c, area, level);
  const top = tip(c, b, a, area, level);
  return [whole[0] - top[0], whole[1] - top[1], whole[2] - top[2]];
}

/** The part of a triangle between corner a and the level line, which cuts the sides a-b and a-c. */
function tip(a: Corner, b: Corner, c: Corner, area: number, level: number): [number, number, number] {
  const p = (level - a.level) / (b.level - a.level);
  const q = (level - a.level) / (c.level - a.level);
  const part = area * p * q;
  const first = a.first + (p * (b.first - a.first) + q * (c.first - a.first)) / 3;
  const second = a.second + (p * (b.second - a.second) + q * (c.second - a.second)) / 3;
  return [part, part * first, part * second];
}

/** Shares out one triangle among the bands. @param levels increasing, enclosing all corner levels */
export function addTriangle(
  sums: LevelSums,
  levels: Float64Array,
  area: number,
  one: Corner,
  two: Corner,
  three: Corner,
): void {
  const corners = [one, two, three].sort((p, q) => p.level - q.level);
  let band = bandOf(levels, corners[0].level);
  let before: [number, number, number] = [0, 0, 0];
  for (; band < levels.length - 1; band++) {
    const here = below(corners, area, band === levels.length - 2 ? Number.POSITIVE_INFINITY : levels[band + 1]);
    sums.area[band] += here[0] - before[0];
    sums.first[band] += here[1] - before[1];
    sums.second[band] += here[2] - before[2];
    before = here;
    if (levels[band + 1] >= corners[2].level) break;
  }
}

/** Band that holds a level. */
export function bandOf(levels: Float64Array, level: number): number {
  let low = 0;
  let high = levels.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (levels[middle] <= level) low = middle;
    else high = middle;
  }
  return low;
}
