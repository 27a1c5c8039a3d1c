/** Straight-sided triangle mesh with quadratic nodes. */

/** A conforming mesh; coordinates and tags mean what its maker says. */
export interface TriMesh {
  /** First coordinate of every node: corners first, then edge middles. */
  readonly x: Float64Array;
  /** Second coordinate of every node. */
  readonly y: Float64Array;
  /** How many nodes are corners. */
  readonly cornerCount: number;
  readonly triangleCount: number;
  /** Six nodes per triangle, counter-clockwise: corners 0, 1, 2, then middles of the edges opposite them. */
  readonly nodes: Int32Array;
  /** Triangle across the edge opposite each corner, -1 outside. */
  readonly neighbours: Int32Array;
  /** Boundary tag of the edge opposite each corner, 0 inside. */
  readonly edgeTags: Int32Array;
}

/** Corner lists as a mesh generator leaves them. */
export interface CornerMesh {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Three corners per triangle, counter-clockwise. */
  readonly corners: readonly number[];
  /** Triangle across the edge opposite each corner, -1 outside. */
  readonly neighbours: readonly number[];
  /** Boundary tag of the edge opposite each corner, 0 inside. */
  readonly edgeTags: readonly number[];
}

/** Adds the edge middles to a corner mesh. */
export function withEdgeNodes(mesh: CornerMesh): TriMesh {
  const cornerCount = mesh.x.length;
  const triangleCount = mesh.corners.length / 3;
  const x = [...mesh.x];
  const y = [...mesh.y];
  const nodes = new Int32Array(6 * triangleCount).fill(-1);
  for (let t = 0; t < triangleCount; t++) {
    for (let k = 0; k < 3; k++) {
      nodes[6 * t + k] = mesh.corners[3 * t + k];
      if (nodes[6 * t + 3 + k] !== -1) continue;
      const a = mesh.corners[3 * t + ((k + 1) % 3)];
      const b = mesh.corners[3 * t + ((k + 2) % 3)];
      const middle = x.length;
      x.push((x[a] + x[b]) / 2);
      y.push((y[a] + y[b]) / 2);
      nodes[6 * t + 3 + k] = middle;
      const other = mesh.neighbours[3 * t + k];
      if (other >= 0) nodes[6 * other + 3 + backEdge(mesh.neighbours, other, t)] = middle;
    }
  }
  return {
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    cornerCount,
    triangleCount,
    nodes,
    neighbours: Int32Array.from(mesh.neighbours),
    edgeTags: Int32Array.from(mesh.edgeTags),
  };
}

/** Which edge of triangle `t` faces triangle `towards`. */
export function backEdge(neighbours: ArrayLike<number>, t: number, towards: number): number {
  return neighbours[3 * t] === towards ? 0 : neighbours[3 * t + 1] === towards ? 1 : 2;
}

/** Twice the signed area of a triangle. */
export function doubleArea(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
}

/** Doubled area and gradients of the barycentric coordinates of triangle `t`; written into `out`. */
export interface TriGeometry {
  area2: number;
  /** d lambda_k / dx */
  readonly gx: Float64Array;
  /** d lambda_k / dy */
  readonly gy: Float64Array;
}

/** Fresh holder for `triGeometry`. */
export const newTriGeometry = (): TriGeometry => ({ area2: 0, gx: new Float64Array(3), gy: new Float64Array(3) });

/** Fills doubled area and barycentric gradients of one triangle. */
export function triGeometry(mesh: TriMesh, t: number, out: TriGeometry): TriGeometry {
  const { x, y, nodes } = mesh;
  const a = nodes[6 * t];
  const b = nodes[6 * t + 1];
  const c = nodes[6 * t + 2];
  out.area2 = doubleArea(x[a], y[a], x[b], y[b], x[c], y[c]);
  const corners = [a, b, c];
  for (let k = 0; k < 3; k++) {
    const p = corners[(k + 1) % 3];
    const q = corners[(k + 2) % 3];
    out.gx[k] = (y[p] - y[q]) / out.area2;
    out.gy[k] = (x[q] - x[p]) / out.area2;
  }
  return out;
}
