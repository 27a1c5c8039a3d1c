/** Orbiting, and flying to the place that was asked for. Frames are drawn only while something moves. */

import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { MathUtils, type OrthographicCamera, Vector3 } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Shape } from '../solve/protocol.ts';
import { useView } from '../store/view.ts';
import { applyMove } from './cameraMoves.ts';
import { eye, type Stretch, stretchOf, zoomFor } from './frame.ts';
import { sceneStore } from './sceneStore.ts';
import { prefersStill } from './still.ts';
import { useCoarseWhileMoving } from './useCoarse.ts';

/** Seconds a flight takes. */
const flightSeconds = 0.35;

interface Flight {
  readonly fromTarget: Vector3;
  readonly fromPosition: Vector3;
  readonly fromZoom: number;
  readonly toTarget: Vector3;
  readonly toPosition: Vector3;
  readonly toZoom: number;
  progress: number;
}

function useControls(onZoom: (zoom: number) => void): OrbitControls {
  const { camera, gl, invalidate } = useThree();
  const controls = useMemo(() => new OrbitControls(camera, gl.domElement), [camera, gl]);
  useEffect(() => {
    const onChange = () => {
      onZoom((camera as OrthographicCamera).zoom);
      // where the camera looks, mm along the axis: a fact that tests read
      gl.domElement.dataset.lookZ = controls.target.x.toFixed(2);
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

function planFlight(camera: OrthographicCamera, controls: OrbitControls, stretch: Stretch, size: Size): Flight {
  const toTarget = new Vector3((stretch.from + stretch.to) / 2, stretch.up ?? 0, 0);
  const toPosition = toTarget.clone().add(new Vector3(...eye).multiplyScalar(1000));
  return {
    fromTarget: controls.target.clone(),
    fromPosition: camera.position.clone(),
    fromZoom: camera.zoom,
    toTarget,
    toPosition,
    toZoom: zoomFor(stretch, size.width, size.height),
    progress: 0,
  };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

function moveAlong(flight: Flight, camera: OrthographicCamera, controls: OrbitControls): void {
  const share = MathUtils.smoothstep(flight.progress, 0, 1);
  controls.target.lerpVectors(flight.fromTarget, flight.toTarget, share);
  camera.position.lerpVectors(flight.fromPosition, flight.toPosition, share);
  camera.zoom = MathUtils.lerp(flight.fromZoom, flight.toZoom, share);
  camera.updateProjectionMatrix();
  controls.update();
}

/** Follows the single moves that keys and commands ask for. */
function useMoves(camera: OrthographicCamera, controls: OrbitControls): void {
  useEffect(
    () =>
      sceneStore.subscribe(({ move }, before) => {
        if (move === before.move) return;
        applyMove(move.by, camera, controls);
        controls.dispatchEvent({ type: 'change' } as never);
      }),
    [camera, controls],
  );
}

/** How much a machine may grow or shrink before it is framed anew: another project, not an edit. */
const sameSize = 1.25;

/** Changes when the machine became another size, so that one shown whole stays so. */
function useSizeClass({ start, end }: Shape['bounds'], whole: boolean): number {
  const framed = useRef(end - start);
  const ratio = (end - start) / framed.current;
  if (whole && (ratio > sameSize || ratio < 1 / sameSize)) framed.current = end - start;
  return framed.current;
}

/** Controls plus flights; tells the zoom (pixels per mm) for the scale bar. */
export function CameraRig({ bounds, onZoom }: { readonly bounds: Shape['bounds']; onZoom(zoom: number): void }) {
  const camera = useThree((state) => state.camera) as OrthographicCamera;
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  const controls = useControls(onZoom);
  useMoves(camera, controls);
  useCoarseWhileMoving(controls);
  const request = useView((state) => state.flight);
  const flight = useRef<Flight | null>(null);
  const first = useRef(true);
  const latest = useRef(bounds);
  latest.current = bounds;
  const sizeClass = useSizeClass(bounds, request.to === 'whole');
  // biome-ignore lint/correctness/useExhaustiveDependencies: a machine of another size is framed anew
  useEffect(() => {
    const planned = planFlight(camera, controls, stretchOf(request.to, latest.current), size);
    planned.progress = first.current || prefersStill() ? 1 : 0;
    first.current = false;
    flight.current = planned;
    invalidate();
  }, [request, size, sizeClass, camera, controls, invalidate]);
  useFrame((_, delta) => {
    const current = flight.current;
    if (!current) return;
    current.progress = Math.min(1, current.progress + Math.min(delta, 0.1) / flightSeconds);
    moveAlong(current, camera, controls);
    if (current.progress >= 1) flight.current = null;
    else invalidate();
  });
  return null;
}
