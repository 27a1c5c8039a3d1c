/** The part of manifold-3d that is used: solids with guaranteed closed surfaces, and set operations on them. Lengths mm. */

/** A triangle mesh as the library takes and gives it. */
interface PlainMesh {
  readonly numProp: number;
  /** xyz first, then whatever else a vertex carries */
  readonly vertProperties: Float32Array;
  readonly triVerts: Uint32Array;
}

/** Three numbers, mm, or a direction. */
type Triple = readonly [number, number, number];

/** A closed body. */
export interface Solid {
  status(): string;
  genus(): number;
  volume(): number;
  numTri(): number;
  isEmpty(): boolean;
  boundingBox(): { readonly min: Triple; readonly max: Triple };
  subtract(other: Solid): Solid;
  translate(by: Triple): Solid;
  /** degrees about x, y, z in this order */
  rotate(degrees: Triple): Solid;
  /** the part on the normal's side first */
  splitByPlane(normal: Triple, offset: number): [Solid, Solid];
  getMesh(): PlainMesh;
}

/** What makes bodies. */
export interface SolidKit {
  readonly Mesh: new (mesh: { numProp: number; vertProperties: Float32Array; triVerts: Uint32Array }) => PlainMesh;
  readonly Manifold: {
    ofMesh(mesh: PlainMesh): Solid;
    cylinder(height: number, lowRadius: number, highRadius: number, segments: number, centred: boolean): Solid;
    cube(size: Triple, centred: boolean): Solid;
    /** outlines as r, z, counter-clockwise */
    revolve(outlines: readonly (readonly (readonly [number, number])[])[], segments: number): Solid;
    union(solids: readonly Solid[]): Solid;
  };
}
