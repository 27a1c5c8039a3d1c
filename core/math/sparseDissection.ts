/** Elimination order for a finite-element system: elements are halved again and again, unknowns go with the smallest part that holds all their elements. */

/** Unknowns of each element, and a place for each element. */
export interface ElementGraph {
  readonly elementCount: number;
  readonly unknownCount: number;
  /** Unknowns per element, `perElement` each; -1 = no unknown there */
  readonly unknowns: Int32Array;
  readonly perElement: number;
  /** Element centres, used only to halve along the longer side. */
  readonly centreX: ArrayLike<number>;
  readonly centreY: ArrayLike<number>;
}

/** One dense step of the elimination. */
export interface Front {
  /** Unknowns of the front: those eliminated here first, then those passed on. */
  readonly unknowns: Int32Array;
  readonly eliminated: number;
  /** Elements assembled here (leaves only). */
  readonly elements: Int32Array;
  /** Fronts whose remainder is added here, by index. */
  readonly children: readonly number[];
}

/** Fronts, children always before parents. */
export interface Dissection {
  readonly graph: ElementGraph;
  readonly fronts: readonly Front[];
  readonly largestFront: number;
}

const LEAF_SIZE = 8;

interface Builder {
  readonly graph: ElementGraph;
  /** Elements that hold each unknown. */
  readonly total: Int32Array;
  /** Of these, how many lie in the part being gathered. */
  readonly count: Int32Array;
  readonly fronts: Front[];
  /** Counts of the unknowns each front passes on. */
  readonly passed: Int32Array[];
  /** Mark of the half that last met each unknown, and the marks given out so far. */
  readonly side: Int32Array;
  cuts: number;
  /** Position of every element along each direction of cutting. */
  readonly keys: readonly Float64Array[];
}

/** Directions along which a part may be cut. */
const DIRECTIONS: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [0.7, 0.7],
  [0.7, -0.7],
];

/** Unknowns that both halves of a cut would share. */
function sharedUnknowns(builder: Builder, first: Int32Array, second: Int32Array): number {
  const { graph, side } = builder;
  const { unknowns, perElement } = graph;
  builder.cuts += 2;
  const mark = builder.cuts;
  const visit = (elements: Int32Array, own: number): number => {
    let shared = 0;
    for (const e of elements)
      for (let k = e * perElement; k < (e + 1) * perElement; k++) {
        const u = unknowns[k];
        if (u < 0) continue;
        if (side[u] === mark && own !== mark) shared++;
        side[u] = own;
      }
    return shared;
  };
  visit(first, mark);
  return visit(second, mark + 1);
}

/** Reorders `items` so that those with the lowest keys fill the first `count` places (Hoare 1961). */
function selectLowest(items: Int32Array, keys: Float64Array, count: number): void {
  let low = 0;
  let high = items.length - 1;
  while (low < high) {
    const pivot = keys[items[(low + high) >> 1]];
    let i = low;
    let j = high;
    while (i <= j) {
      while (keys[items[i]] < pivot) i++;
      while (keys[items[j]] > pivot) j--;
      if (i > j) break;
      const swapped = items[i];
      items[i++] = items[j];
      items[j--] = swapped;
    }
    if (count <= j) high = j;
    else if (count >= i) low = i;
    else return;
  }
}

/** Halves a part along the direction that leaves the fewest shared unknowns. */
function halves(builder: Builder, elements: Int32Array): [Int32Array, Int32Array] {
  const middle = elements.length >> 1;
  let best: [Int32Array, Int32Array] = [elements, elements];
  let least = Number.POSITIVE_INFINITY;
  for (const keys of builder.keys) {
    const items = elements.slice();
    selectLowest(items, keys, middle);
    const cut: [Int32Array, Int32Array] = [items.subarray(0, middle), items.subarray(middle)];
    const shared = sharedUnknowns(builder, cut[0], cut[1]);
    if (shared < least) [best, least] = [cut, shared];
  }
  return best;
}

/** Unknowns of a part, with the number of its elements that hold each in `count`. */
function gather(builder: Builder, elements: Int32Array, children: readonly number[]): number[] {
  const { graph, count, fronts, passed } = builder;
  const found: number[] = [];
  const visit = (u: number, times: number): void => {
    if (count[u] === 0) found.push(u);
    count[u] += times;
  };
  for (const e of elements)
    for (let k = 0; k < graph.perElement; k++) {
      const u = graph.unknowns[e * graph.perElement + k];
      if (u >= 0) visit(u, 1);
    }
  for (const child of children) {
    const { unknowns, eliminated } = fronts[child];
    for (let i = eliminated; i < unknowns.length; i++) visit(unknowns[i], passed[child][i - eliminated]);
  }
  return found;
}

/** An unknown is eliminated in the smallest part that holds all its elements. */
function build(builder: Builder, elements: Int32Array): number {
  const leaf = elements.length <= LEAF_SIZE;
  const children = leaf ? [] : halves(builder, elements).map((half) => build(builder, half));
  const own = leaf ? elements : new Int32Array(0);
  const { count, total, fronts, passed } = builder;
  const found = gather(builder, own, children);
  const done = found.filter((u) => count[u] === total[u]);
  const open = found.filter((u) => count[u] !== total[u]);
  passed.push(Int32Array.from(open, (u) => count[u]));
  for (const u of found) count[u] = 0;
  fronts.push({ unknowns: Int32Array.from([...done, ...open]), eliminated: done.length, elements: own, children });
  return fronts.length - 1;
}

/**
 * Orders a system by nested dissection of its elements (after George 1973).
 * @param graph at least one element; every unknown in at least one element
 */
export function dissect(graph: ElementGraph): Dissection {
  const total = new Int32Array(graph.unknownCount);
  for (const u of graph.unknowns) if (u >= 0) total[u]++;
  const make = (n: number): Int32Array => new Int32Array(n);
  const keys = DIRECTIONS.map(([dx, dy]) =>
    Float64Array.from({ length: graph.elementCount }, (_, e) => dx * graph.centreX[e] + dy * graph.centreY[e]),
  );
  const builder: Builder = {
    ...{ graph, total, count: make(graph.unknownCount), fronts: [], passed: [] },
    ...{ side: make(graph.unknownCount), cuts: 0, keys },
  };
  const all = Int32Array.from({ length: graph.elementCount }, (_, e) => e);
  build(builder, all);
  const largestFront = builder.fronts.reduce((most, front) => Math.max(most, front.unknowns.length), 0);
  return { graph, fronts: builder.fronts, largestFront };
}
