/** Sums of linear functions between the level lines of another linear function on triangles. */

/** Sums per band between neighbouring levels. */
export interface LevelSums {
  /** Increasing, enclosing all values that will come. */
  readonly levels: Float64Array;
  /** Integral of the first weight per band; levels.length - 1 bands. */
  readonly first: Float64Array;
  /** Integral of the second weight per band. */
  readonly second: Float64Array;
}

/** Empty sums for bands between levels. */
export function levelSums(levels: Float64Array): LevelSums {
  return { levels, first: new Float64Array(levels.length - 1), second: new Float64Array(levels.length - 1) };
}

/** Values at the nodes of a triangulation. */
export interface NodeValues {
  readonly level: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
}

/** Integrals of both weights below a level in the triangle under work; reused between calls. */
const below = new Float64Array(2);

/** Shares out one triangle with nodes a, b, c and a given area among the bands. */
export function addTriangle(sums: LevelSums, nodes: NodeValues, area: number, a: number, b: number, c: number): void {
  const { levels, first, second } = sums;
  const { level } = nodes;
  let [low, middle, high] = [a, b, c];
  if (level[low] > level[middle]) [low, middle] = [middle, low];
  if (level[middle] > level[high]) [middle, high] = [high, middle];
  if (level[low] > level[middle]) [low, middle] = [middle, low];
  let beforeFirst = 0;
  let beforeSecond = 0;
  const last = levels.length - 2;
  for (let band = bandOf(levels, level[low]); band <= last; band++) {
    const done = band === last || levels[band + 1] >= level[high];
    if (done) whole(nodes, area, low, middle, high);
    else belowLevel(nodes, area, low, middle, high, levels[band + 1]);
    first[band] += below[0] - beforeFirst;
    second[band] += below[1] - beforeSecond;
    beforeFirst = below[0];
    beforeSecond = below[1];
    if (done) break;
  }
}

function whole(nodes: NodeValues, area: number, a: number, b: number, c: number): void {
  below[0] = (area * (nodes.first[a] + nodes.first[b] + nodes.first[c])) / 3;
  below[1] = (area * (nodes.second[a] + nodes.second[b] + nodes.second[c])) / 3;
}

function belowLevel(nodes: NodeValues, area: number, a: number, b: number, c: number, level: number): void {
  if (level <= nodes.level[b]) {
    tip(nodes, area, a, b, c, level);
    return;
  }
  tip(nodes, area, c, b, a, level);
  const [topFirst, topSecond] = [below[0], below[1]];
  whole(nodes, area, a, b, c);
  below[0] -= topFirst;
  below[1] -= topSecond;
}

/** The part of a triangle between corner a and the level line, which cuts the sides a-b and a-c. */
function tip(nodes: NodeValues, area: number, a: number, b: number, c: number, at: number): void {
  const { level, first, second } = nodes;
  const p = (at - level[a]) / (level[b] - level[a]);
  const q = (at - level[a]) / (level[c] - level[a]);
  const part = area * p * q;
  below[0] = part * (first[a] + (p * (first[b] - first[a]) + q * (first[c] - first[a])) / 3);
  below[1] = part * (second[a] + (p * (second[b] - second[a]) + q * (second[c] - second[a])) / 3);
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
