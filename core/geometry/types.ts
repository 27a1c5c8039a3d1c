/** Plain-data results of the geometry stage. */

/**
 * The screw and barrel sampled along z: the solvers' whole view of them.
 * Every array has `count` entries; section boundaries appear twice (end of one, start of the next), so every kink and
 * step is exact. z never decreases.
 */
export interface Stations {
  readonly count: number;
  /** m */
  readonly z: Float64Array;
  /** index into screw.sections */
  readonly section: Uint16Array;
  /** 1 where a flight runs */
  readonly flighted: Uint8Array;
  /** m */
  readonly rootRadius: Float64Array;
  /** m */
  readonly barrelRadius: Float64Array;
  /** radial depth from root to barrel, m */
  readonly depth: Float64Array;
  /** m; 0 where plain */
  readonly lead: Float64Array;
  readonly starts: Uint8Array;
  /** axial land at the flight's tip, m; 0 where plain */
  readonly flightWidth: Float64Array;
  /** rad */
  readonly flankAngle: Float64Array;
  /** m */
  readonly rootFillet: Float64Array;
  /** helix angle atan(lead / (2 pi r)) at root, mean and barrel radius, rad; 0 where plain */
  readonly helixRoot: Float64Array;
  readonly helixMean: Float64Array;
  readonly helixBarrel: Float64Array;
  /** channel width normal to the flight at the barrel and at mean depth, m; circumference where plain */
  readonly widthBarrel: Float64Array;
  readonly widthMean: Float64Array;
  /** free area of the transverse section (all channels), m² */
  readonly freeArea: Float64Array;
  /** helical path length at mean radius from z = 0, m */
  readonly helicalLength: Float64Array;
  /** free volume from z = 0, m³ */
  readonly freeVolume: Float64Array;
  /** wetted area (root, flanks, barrel) from z = 0, m² */
  readonly wettedArea: Float64Array;
}

/** Figures of the geometry as a whole. SI. */
export interface GeometrySummary {
  /** length of the flighted and plain sections, m */
  readonly sectionsLength: number;
  /** z of the foremost point of the tip (pin included), m */
  readonly tipEnd: number;
  /** axial distance from the foremost point to the first narrowing of the bore after it, m (negative inside a cone) */
  readonly tipGap: number;
  /** flight radius, m */
  readonly flightRadius: number;
  /** free volume of one turn at the feed opening and at the end of the last flight, m³ */
  readonly feedVolumePerTurn: number;
  readonly endVolumePerTurn: number;
  /** feed volume per turn over end volume per turn */
  readonly compressionRatio: number;
  /** melt volume in the screw channel, around the tip up to the nozzle, and in the nozzle, m³ */
  readonly channelVolume: number;
  readonly tipVolume: number;
  readonly nozzleVolume: number;
  /** m² */
  readonly wettedArea: number;
  /** solid volume of the screw without shank, and of the shank, m³ */
  readonly screwVolume: number;
  readonly shankVolume: number;
  /** smallest root diameter anywhere on the screw, m, and where, m */
  readonly leastRootDiameter: number;
  readonly leastRootAt: number;
}

/** Watertight triangle mesh: outward normals, every edge shared by exactly two triangles. */
export interface SolidMesh {
  /** xyz triples, m; the axis is z */
  readonly positions: Float32Array;
  /** three per triangle, counter-clockwise from outside */
  readonly indices: Uint32Array;
}

/** How finely to mesh. */
export interface MeshOptions {
  /** points round a full turn, >= 24 */
  readonly aroundCount: number;
  /** rings per turn of lead, >= 12 */
  readonly ringsPerTurn: number;
}

/** r-z polyline of the wetted outer wall (barrel, then nozzle) and of the screw's inner wall, m. */
export interface AxialOutline {
  readonly z: Float64Array;
  readonly r: Float64Array;
}

/** Closed polygon in a plane, counter-clockwise, first point not repeated, m. */
export interface PlaneOutline {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** A solid mesh that knows how far it may lie from the true surface. */
export interface MeasuredMesh extends SolidMesh {
  /** largest radial distance of arcs and helices from their chords, compensation included, m */
  readonly deviation: number;
}
