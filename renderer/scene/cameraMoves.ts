/** Single moves of the camera, asked for by keys and commands. */

import { MathUtils, type OrthographicCamera, Spherical, Vector3 } from 'three';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import { eye } from './frame.ts';
import type { CameraMove } from './sceneStore.ts';

/** One press orbits this far, rad; pans by this many pixels; zooms by this factor. */
const step = { turn: Math.PI / 18, pan: 48, zoom: 1.2 } as const;

const turns: Partial<Record<CameraMove, readonly [number, number]>> = {
  left: [-step.turn, 0],
  right: [step.turn, 0],
  up: [0, -step.turn],
  down: [0, step.turn],
};

const pans: Partial<Record<CameraMove, readonly [number, number]>> = {
  'pan-left': [-step.pan, 0],
  'pan-right': [step.pan, 0],
  'pan-up': [0, step.pan],
  'pan-down': [0, -step.pan],
};

/** Directions to look from; not quite upright, where left and right would be lost. */
const looks: Partial<Record<CameraMove, readonly [number, number, number]>> = {
  side: eye,
  above: [0, 0.9999, 0.0141],
  end: [0.9999, 0.01, 0.01],
};

function turn(camera: OrthographicCamera, target: Vector3, [theta, phi]: readonly [number, number]): void {
  const offset = new Spherical().setFromVector3(camera.position.clone().sub(target));
  offset.theta += theta;
  offset.phi = MathUtils.clamp(offset.phi + phi, 0.01, Math.PI - 0.01);
  camera.position.copy(target).add(new Vector3().setFromSpherical(offset));
}

function pan(camera: OrthographicCamera, target: Vector3, [x, y]: readonly [number, number]): void {
  const along = new Vector3(x, y, 0).divideScalar(camera.zoom).applyQuaternion(camera.quaternion);
  camera.position.add(along);
  target.add(along);
}

/** Moves the camera; the controls then draw anew. */
export function applyMove(by: CameraMove, camera: OrthographicCamera, controls: OrbitControls): void {
  const { target } = controls;
  const [turned, panned, look] = [turns[by], pans[by], looks[by]];
  if (turned) turn(camera, target, turned);
  if (panned) pan(camera, target, panned);
  if (look) camera.position.copy(target).addScaledVector(new Vector3(...look), camera.position.distanceTo(target));
  if (by === 'in') camera.zoom *= step.zoom;
  if (by === 'out') camera.zoom /= step.zoom;
  camera.updateProjectionMatrix();
  controls.update();
}
