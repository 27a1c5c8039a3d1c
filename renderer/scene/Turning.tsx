/** Turns its content about the axis at the set speed, or by steps: a right-hand screw turns so that its flights move forward. */

import { useFrame, useThree } from '@react-three/fiber';
import { type ReactNode, useEffect, useRef } from 'react';
import type { Group } from 'three';
import { activeRevision, useProjectState } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { turnStep, useScene } from './sceneStore.ts';

/** The turning part. */
export function Turning({ children }: { readonly children: ReactNode }) {
  const group = useRef<Group>(null);
  const turning = useView((state) => state.turning);
  const steps = useScene((state) => state.steps);
  const taken = useRef(steps);
  const invalidate = useThree((state) => state.invalidate);
  const sense = useProjectState((state) =>
    state.history && activeRevision(state.history.present).screw.hand === 'left' ? 1 : -1,
  );
  const speed = useProjectState((state) => (state.history?.present.process.screwSpeedRpm ?? 0) / 60);
  useEffect(() => {
    if (turning) invalidate();
  }, [turning, invalidate]);
  useEffect(() => {
    if (group.current) group.current.rotation.z += sense * turnStep * (steps - taken.current);
    taken.current = steps;
    invalidate();
  }, [steps, sense, invalidate]);
  useFrame((_, delta) => {
    if (!turning || !group.current) return;
    group.current.rotation.z += 2 * Math.PI * sense * speed * Math.min(delta, 0.25);
    invalidate();
  });
  return <group ref={group}>{children}</group>;
}
