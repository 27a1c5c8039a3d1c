/** Where the machine is open, and whether melt is painted there. Nothing here needs the 3D code. */

import { useMelt } from '../store/melt.ts';
import { useView } from '../store/view.ts';
import { opening } from './opening.ts';

/** Half-planes through the axis that can be seen, rad from the machine's +x towards its +y, which is up. */
export function useOpenPlanes(): readonly number[] {
  const wedge = useView((state) => state.section === null && state.barrel === 'cutaway');
  // the machine's +x points away from the viewer, so angles from the viewer up count back from pi
  return wedge ? opening.map((angle) => Math.PI - angle) : [Math.PI / 2, -Math.PI / 2];
}

/** Whether melt is painted now: a turning screw moves its channel out of the painted plane. */
export const useMeltShown = (): boolean => {
  const turning = useView((state) => state.turning);
  return useMelt((state) => state.shown) && !turning;
};
