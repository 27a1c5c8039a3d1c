/** Where the machine is open, and whether melt is painted there. Nothing here needs the 3D code. */

import { useMemo } from 'react';
import { type Prediction, type SpotPlace, spotPlace } from '../../core/index.ts';
import { useMelt } from '../store/melt.ts';
import { activeRevision, useProjectState } from '../store/project.ts';
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

/** The screw's hand. */
export const useHand = (): 'right' | 'left' =>
  useProjectState((state) => (state.history ? activeRevision(state.history.present).screw.hand : 'right'));

/** Where the dead spots of a prediction are seen in the first open half-plane; in its order of spots. */
export function useSpotPlaces(prediction: Prediction | null): readonly SpotPlace[] {
  const [azimuth = 0] = useOpenPlanes();
  const hand = useHand();
  return useMemo(() => {
    const { dead, stations, fields } = prediction ?? {};
    if (!dead || !stations) return [];
    return dead.spots.map((spot) => spotPlace(spot, stations, fields?.channel ?? [], azimuth, hand));
  }, [prediction, azimuth, hand]);
}
