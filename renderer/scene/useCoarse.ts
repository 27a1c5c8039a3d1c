/** Fewer pixels and plainer light while the view moves, so that it follows the hand where no graphics card draws. */

import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import { drawsInSoftware } from './canDraw.ts';
import { setScene } from './sceneStore.ts';

/** Pixels per CSS pixel while moving, and rest after which the picture is drawn finely again, ms. */
const moving = { ratio: 0.6, restMs: 180 } as const;

/** Pixels per CSS pixel at rest. Without smoothed edges, which software draws slowly, more pixels stand in for them. */
export const restRatio = (): number => {
  const own = globalThis.devicePixelRatio || 1;
  return drawsInSoftware() ? Math.max(own, 1.5) : Math.min(own, 2);
};

/** Lowers the effort from the first movement to a short rest after the last one; only where a processor draws. */
export function useCoarseWhileMoving(controls: OrbitControls): void {
  const setDpr = useThree((state) => state.setDpr);
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    if (!drawsInSoftware()) return;
    let timer: ReturnType<typeof setTimeout> | null = null;
    const fine = () => {
      timer = null;
      setDpr(restRatio());
      setScene({ moving: false });
      invalidate();
    };
    const onChange = () => {
      if (timer) clearTimeout(timer);
      else {
        setDpr(moving.ratio);
        setScene({ moving: true });
      }
      timer = setTimeout(fine, moving.restMs);
    };
    controls.addEventListener('change', onChange);
    return () => {
      controls.removeEventListener('change', onChange);
      if (timer) clearTimeout(timer);
    };
  }, [controls, setDpr, invalidate]);
}
