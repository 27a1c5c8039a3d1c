/** Messages between the window and the worker that predicts. Plain data and typed arrays only. */

import type {
  AxialOutline,
  FirstFigures,
  Issue,
  PlaneOutline,
  Prediction,
  PredictionOptions,
  Presentation,
  Project,
} from '../../core/index.ts';

/** A mesh ready to draw, normals smoothed only below the crease angle. */
export interface DrawnMesh {
  /** xyz per corner, m */
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** three per triangle */
  readonly indices: Uint32Array;
}

/** Extent for the camera, m along z; radius of the barrel's outside, m. */
export interface Bounds {
  readonly start: number;
  readonly feedStart: number;
  readonly feedEnd: number;
  readonly barrelEnd: number;
  readonly end: number;
  readonly radius: number;
}

/** The solid parts of one design. */
export interface Shape {
  readonly revisionId: string;
  readonly designHash: string;
  readonly screw: DrawnMesh;
  readonly barrel: DrawnMesh;
  readonly nozzle: DrawnMesh;
  /** bore of barrel and nozzle, and the screw's root and tip */
  readonly outline: { readonly outer: AxialOutline; readonly inner: AxialOutline };
  /** flights where the plane through the axis cuts them, m: x along the axis, y from it */
  readonly flights: readonly PlaneOutline[];
  /** stretches of equal outer radius of the barrel, m */
  readonly barrelSkin: readonly { readonly from: number; readonly to: number; readonly radius: number }[];
  /** radius of the flights' lands, m */
  readonly flightRadius: number;
  /** of what the shape was made from, see `shapeKey` */
  readonly key: string;
  /** short hash of the screw's vertices, so that a change of shape can be told */
  readonly meshHash: string;
  /** extent for the camera, m */
  readonly bounds: Bounds;
}

/** How deep a prediction goes. */
type Depth = 'first' | PredictionOptions['fields'];

/** What the window asks: predict this revision. */
export interface Request {
  readonly run: number;
  readonly project: Project;
  readonly revisionId: string;
  /** false where only the numbers are wanted, as for comparing */
  readonly withShape: boolean;
  /** key of the shape that the asker has, which need not be made again; null where it has none */
  readonly knownShape: string | null;
  /** the first figures, coarse; an estimate by formulas; or solved fields, which take seconds */
  readonly fields: Depth;
  /** see hold.ts; null where the run is not to be held */
  readonly hold?: SharedArrayBuffer | null;
}

/** What the worker answers: shape (if asked) and progress, then one of the others, which ends the run. */
export type Answer =
  | { readonly kind: 'shape'; readonly run: number; readonly shape: Shape }
  | { readonly kind: 'sameShape'; readonly run: number; readonly designHash: string }
  | { readonly kind: 'first'; readonly run: number; readonly figures: FirstFigures }
  | { readonly kind: 'issues'; readonly run: number; readonly issues: readonly Issue[] }
  | {
      readonly kind: 'prediction';
      readonly run: number;
      readonly prediction: Prediction;
      readonly presentation: Presentation;
      readonly tookMs: number;
    }
  | { readonly kind: 'progress'; readonly run: number; readonly done: number; readonly stage: string }
  | { readonly kind: 'fault'; readonly run: number; readonly message: string }
  /** the run was given up as it was told to be */
  | { readonly kind: 'givenUp'; readonly run: number };

/** Whether a run says no more after this answer. */
export const endsRun = ({ kind }: Answer): boolean => kind !== 'shape' && kind !== 'sameShape' && kind !== 'progress';
