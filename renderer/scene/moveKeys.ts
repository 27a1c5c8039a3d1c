/** Keys that move the camera. */

import type { CameraMove } from './sceneStore.ts';

/** The move that a key asks for, or null. */
export function moveOfKey(key: string, shift: boolean): CameraMove | null {
  const arrows: Record<string, 'left' | 'right' | 'up' | 'down'> = {
    ArrowLeft: 'left',
    ArrowRight: 'right',
    ArrowUp: 'up',
    ArrowDown: 'down',
  };
  const arrow = arrows[key];
  if (arrow) return shift ? `pan-${arrow}` : arrow;
  if (key === '+' || key === '=') return 'in';
  return key === '-' || key === '_' ? 'out' : null;
}
