/** One camera for several machines in one canvas: each frame draws every machine into its own part of it. */

import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import { type Group, type OrthographicCamera, Vector3 } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import { applyMove } from '../scene/cameraMoves.ts';
import { eye, zoomFor } from '../scene/frame.ts';
import type { CameraMove } from '../scene/sceneStore.ts';
import { useCoarseWhileMoving } from '../scene/useCoarse.ts';
import { type Stood, sharedStretch, type ViewPlace, viewBoxes } from './views.ts';

/** A request to look at a part or to move; the counter makes repeats count. */
export interface LookRequest {
  readonly to: ViewPlace;
  readonly count: number;
}

/** A request to move the camera by one step. */
export interface MoveRequest {
  readonly by: CameraMove;
  readonly count: number;
}

function useControls(onZoom: (zoom: number) => void): OrbitControls {
  const camera = useThree((state) => state.camera) as OrthographicCamera;
  const { gl, invalidate } = useThree();
  const controls = useMemo(() => new OrbitControls(camera, gl.domElement), [camera, gl]);
  useCoarseWhileMoving(controls);
  useEffect(() => {
    const onChange = () => {
      onZoom(camera.zoom);
      // where the camera looks, mm along the axis: a fact that tests read
      gl.domElement.dataset.lookZ = controls.target.x.toFixed(2);
      gl.domElement.dataset.eye = camera.position
        .clone()
        .sub(controls.target)
        .normalize()
        .toArray()
        .map((v) => v.toFixed(3))
        .join();
      invalidate();
    };
    controls.addEventListener('change', onChange);
    return () => {
      controls.removeEventListener('change', onChange);
      controls.dispose();
    };
  }, [controls, camera, gl, invalidate, onZoom]);
  return controls;
}

/** Draws with the camera cut to one view, then gives it back as the controls know it: one pixel of the canvas is one of a view. */
function drawInto(camera: OrthographicCamera, width: number, height: number, draw: () => void): void {
  const { left, right, top, bottom } = camera;
  Object.assign(camera, { left: -width / 2, right: width / 2, top: height / 2, bottom: -height / 2 });
  camera.updateProjectionMatrix();
  draw();
  Object.assign(camera, { left, right, top, bottom });
  camera.updateProjectionMatrix();
}

/** What the camera follows. */
interface LinkedProps {
  /** one per machine, in the order of the views */
  readonly groups: RefObject<(Group | null)[]>;
  readonly stood: readonly Stood[];
  readonly look: LookRequest;
  readonly move: MoveRequest | null;
  onZoom(zoom: number): void;
}

/** Looks at what is asked for, anew when the machines' extent or the canvas changes. */
function useLooking({ stood, look, onZoom }: LinkedProps, controls: OrbitControls): void {
  const camera = useThree((state) => state.camera) as OrthographicCamera;
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  const latest = useRef(stood);
  latest.current = stood;
  const extent = stood.map(({ bounds, shift }) => `${bounds.start} ${bounds.end} ${shift}`).join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the extent stands for the machines
  useEffect(() => {
    const machines = latest.current;
    if (machines.length === 0) return;
    const stretch = sharedStretch(look.to, machines);
    const [box] = viewBoxes(machines.length, size.width, size.height);
    controls.target.set((stretch.from + stretch.to) / 2, 0, 0);
    camera.position.copy(controls.target).add(new Vector3(...eye).multiplyScalar(1000));
    camera.zoom = zoomFor(stretch, box?.width ?? size.width, box?.height ?? size.height);
    camera.updateProjectionMatrix();
    controls.update();
    onZoom(camera.zoom);
    invalidate();
  }, [look, size, camera, controls, extent, invalidate, onZoom]);
}

/** The camera, its controls and the drawing; lives inside the canvas. */
export function LinkedViews(props: LinkedProps) {
  const { groups, stood, move, onZoom } = props;
  const camera = useThree((state) => state.camera) as OrthographicCamera;
  const size = useThree((state) => state.size);
  const controls = useControls(onZoom);
  useLooking(props, controls);
  useEffect(() => {
    if (!move) return;
    applyMove(move.by, camera, controls);
    controls.dispatchEvent({ type: 'change' } as never);
  }, [move, camera, controls]);
  useFrame(({ gl, scene }) => {
    const shown = groups.current;
    gl.setScissorTest(true);
    viewBoxes(stood.length, size.width, size.height).forEach(({ x, y, width, height }, i) => {
      shown.forEach((group, j) => {
        if (group) group.visible = i === j;
      });
      gl.setViewport(x, y, width, height);
      gl.setScissor(x, y, width, height);
      drawInto(camera, width, height, () => gl.render(scene, camera));
    });
    gl.setScissorTest(false);
    gl.setViewport(0, 0, size.width, size.height);
  }, 1);
  return null;
}
