/** Solved fields as plain arrays in machine coordinates, for views: m, s. */

/** One cross-section of the channel, whole width. Node (i, j), i across, j up, at i * rows + j. */
export interface ChannelMap {
  /** where it was taken, m */
  readonly z: number;
  /** index into screw.sections */
  readonly section: number;
  readonly columns: number;
  readonly rows: number;
  /** axial distance from mid-channel, m; negative upstream */
  readonly x: Float32Array;
  /** radius, m */
  readonly r: Float32Array;
  /** m/s, seen from the screw */
  readonly speed: Float32Array;
  /** dwell of the node's orbit here, over the mean */
  readonly dwell: Float32Array;
  /** s since melting, by which melt on this orbit gets here */
  readonly age: Float32Array;
  /** mean of the above over the flow, s */
  readonly meanAge: number;
}

/** Tip and nozzle: half a meridional section of triangles. */
export interface HeadMap {
  /** m */
  readonly z: Float32Array;
  readonly r: Float32Array;
  readonly triangles: Uint32Array;
  /** in the meridional plane, m/s */
  readonly speed: Float32Array;
  /** share of the flow between the wall and here; under 0 and over 1 in eddies */
  readonly stream: Float32Array;
  /** s since the end of the flights */
  readonly dwell: Float32Array;
  /** s since melting, the channel's mean included */
  readonly age: Float32Array;
}

/** What a solved prediction shows beyond its numbers. */
export interface SolvedFields {
  /** in order along z; nodes correspond, so values in between can be interpolated */
  readonly channel: readonly ChannelMap[];
  readonly head: HeadMap | null;
  /** mean over the whole path, s */
  readonly meanTime: number;
}
