/** Line kinds: wide 0.5 and narrow 0.25 mm, dashes after ISO 128-2 in multiples of the narrow width; frame after ISO 5457. */

import type { LayerName } from './model.ts';

/** How the lines of a layer look. */
export interface LineKind {
  /** mm */
  readonly width: number;
  /** dash and gap by turns, mm; empty = continuous */
  readonly dashes: readonly number[];
  /** number of the colour in a DXF reader's palette, for its screen only: paper is black */
  readonly colour: number;
}

const longDashDot = [6, 0.75, 0.25, 0.75];

/** Every layer. */
export const layers: Readonly<Record<LayerName, LineKind>> = {
  FRAME: { width: 0.7, dashes: [], colour: 7 },
  OUTLINE: { width: 0.5, dashes: [], colour: 7 },
  THIN: { width: 0.25, dashes: [], colour: 8 },
  CENTRE: { width: 0.25, dashes: longDashDot, colour: 1 },
  CUT: { width: 0.5, dashes: [], colour: 6 },
  HATCH: { width: 0.18, dashes: [], colour: 8 },
  DIMENSION: { width: 0.25, dashes: [], colour: 3 },
  TEXT: { width: 0.25, dashes: [], colour: 7 },
};

/** Names of all layers. */
export const layerNames = Object.keys(layers) as readonly LayerName[];
