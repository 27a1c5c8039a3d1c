/** What is taken away of the machine so that one sees into it. World: x along the axis, y up, z towards the viewer; mm. */

import { useMemo } from 'react';
import { Plane, Vector3 } from 'three';
import type { Bounds } from '../solve/protocol.ts';
import { useView } from '../store/view.ts';
import { worldPerMetre } from './frame.ts';
import { opening } from './opening.ts';
import { useMeltShown } from './openPlanes.ts';
import type { Cut } from './Solid.tsx';
import { type SliceKind, useScene } from './sceneStore.ts';
import { sliceAt } from './sliceAt.ts';

/** Nothing taken away. */
export const uncut: Cut = { planes: [], wedge: false };

/** What lies between the two angles is behind both planes, so it is taken out. */
export const wedge: Cut = {
  planes: [
    new Plane(new Vector3(0, -Math.cos(opening[0]), Math.sin(opening[0])), 0),
    new Plane(new Vector3(0, Math.cos(opening[1]), -Math.sin(opening[1])), 0),
  ],
  wedge: true,
};

/** The plane of a slice: what lies before it, above it or downstream of it, as one looks, is taken away. */
export function slicePlane(kind: SliceKind, share: number, bounds: Bounds): Plane {
  const at = sliceAt(kind, share, bounds) * worldPerMetre;
  const normal = { upright: new Vector3(0, 0, -1), level: new Vector3(0, -1, 0), across: new Vector3(-1, 0, 0) };
  return new Plane(normal[kind], at);
}

/** The slice that is open, or null. Painted melt lies in the upright plane through the axis. */
export function useSlice(bounds: Bounds): Cut | null {
  const chosen = useView((state) => state.section);
  const chosenKind = useScene((state) => state.slice);
  const painted = useMeltShown();
  const section = chosen !== null && painted ? 0 : chosen;
  const kind = painted ? 'upright' : chosenKind;
  return useMemo(
    () => (section === null ? null : { planes: [slicePlane(kind, section, bounds)], wedge: false }),
    [section, kind, bounds],
  );
}
