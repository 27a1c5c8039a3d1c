/** Colours of the 3D view, read from the style sheet so that every theme fits. */

import { useMemo } from 'react';
import { useRootLook } from '../store/look.ts';

const names = {
  screw: '--scene-screw',
  screwCut: '--scene-screw-cut',
  barrel: '--scene-barrel',
  barrelCut: '--scene-barrel-cut',
  nozzle: '--scene-nozzle',
  nozzleCut: '--scene-nozzle-cut',
  mark: '--mark',
  grain: '--scene-grain',
  misfit: '--scene-misfit',
  outline: '--scene-outline',
  soft: '--scene-soft',
  melting: '--scene-melting',
  molten: '--scene-molten',
  hopper: '--steel',
} as const;

/** One CSS colour per thing. */
export type SceneColours = Readonly<Record<keyof typeof names, string>>;

function read(): SceneColours {
  const style = getComputedStyle(document.documentElement);
  const entries = Object.entries(names).map(([key, name]) => [key, style.getPropertyValue(name).trim() || 'grey']);
  return Object.fromEntries(entries) as SceneColours;
}

/** The colours now. */
export function useSceneColours(): SceneColours {
  const look = useRootLook();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new look means new values in the style sheet
  return useMemo(read, [look]);
}
