/** Inside the canvas: tells where things stand in the view, reads the position under the pointer, takes measured places. */

import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { Matrix4 } from 'three';
import type { Shape } from '../solve/protocol.ts';
import { setView, viewStore } from '../store/view.ts';
import { pickPlace } from './pick.ts';
import { axialUnder, type Pixel, projectionStore } from './projection.ts';
import { addPoint, sceneStore } from './sceneStore.ts';

/** Keeps the projection up to date; a frame that moved nothing changes nothing. */
function useFollow(): void {
  const matrix = useRef(new Matrix4());
  useFrame(({ camera, size }) => {
    camera.updateMatrixWorld();
    matrix.current.multiplyMatrices(camera.projectionMatrix, camera.matrixWorldInverse);
    const before = projectionStore.getState();
    const { elements } = matrix.current;
    const same = before.width === size.width && before.height === size.height;
    if (same && elements.every((value, k) => value === before.matrix[k])) return;
    projectionStore.setState({ matrix: [...elements], width: size.width, height: size.height });
  });
}

const pixelIn = (canvas: HTMLElement, event: PointerEvent): Pixel => {
  const box = canvas.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
};

/** Points at the axial position under the pointer in every linked view, while no button is held. */
function useHover({ bounds }: Shape): void {
  const canvas = useThree((state) => state.gl.domElement);
  useEffect(() => {
    const tell = (z: number | null) => {
      if (viewStore.getState().hoverZ !== z) setView({ hoverZ: z });
    };
    const onMove = (event: PointerEvent) => {
      if (event.buttons !== 0) return;
      const view = projectionStore.getState();
      const found = view.width > 0 ? axialUnder(view, pixelIn(canvas, event)) : null;
      const perMm = Math.hypot(view.matrix[5] ?? 0, view.matrix[4] ?? 0, view.matrix[6] ?? 0) * (view.height / 2);
      const z = found && found.off < 1.15 * 1000 * bounds.radius * perMm ? found.x / 1000 : null;
      tell(z !== null && z >= bounds.start && z <= bounds.end ? z : null);
    };
    const onLeave = () => tell(null);
    canvas.addEventListener('pointermove', onMove);
    canvas.addEventListener('pointerleave', onLeave);
    return () => {
      canvas.removeEventListener('pointermove', onMove);
      canvas.removeEventListener('pointerleave', onLeave);
    };
  }, [canvas, bounds]);
}

/** A press further than this from its release is a drag, px. */
const dragFrom = 4;

/** Takes a place in at each click while measuring. */
function useMeasuring(): void {
  const get = useThree((state) => state.get);
  useEffect(() => {
    const canvas = get().gl.domElement;
    let pressed: Pixel | null = null;
    const onDown = (event: PointerEvent) => {
      pressed = event.button === 0 ? [event.clientX, event.clientY] : null;
    };
    const onUp = (event: PointerEvent) => {
      const still = pressed && Math.hypot(event.clientX - pressed[0], event.clientY - pressed[1]) < dragFrom;
      if (!still || !sceneStore.getState().measuring) return;
      const { camera, scene, size } = get();
      const found = pickPlace(scene, camera, pixelIn(canvas, event), size);
      if (found) addPoint(found);
    };
    canvas.addEventListener('pointerdown', onDown);
    canvas.addEventListener('pointerup', onUp);
    return () => {
      canvas.removeEventListener('pointerdown', onDown);
      canvas.removeEventListener('pointerup', onUp);
    };
  }, [get]);
}

/** The three of them. */
export function Followers({ shape }: { readonly shape: Shape }) {
  useFollow();
  useHover(shape);
  useMeasuring();
  return null;
}
