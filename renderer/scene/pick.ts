/** The place on a part under a pixel, as it is seen: what a slice took away does not count, and its face does. */

import {
  BackSide,
  type BufferGeometry,
  type Camera,
  type Intersection,
  type Material,
  Mesh,
  type OrthographicCamera,
  type Plane,
  Raycaster,
  type Scene,
  Vector2,
  Vector3,
} from 'three';
import { sharpVertices, snapped } from './measuring.ts';
import type { Pixel, World } from './projection.ts';
import type { MeasuredPoint } from './sceneStore.ts';

/** Places are drawn to corners and edges within this, px. */
const reach = 9;

const sharpOf = new WeakMap<BufferGeometry, Uint8Array>();

function sharpIn(geometry: BufferGeometry): Uint8Array {
  const known = sharpOf.get(geometry) ?? sharpVertices(geometry.getAttribute('position').array);
  sharpOf.set(geometry, known);
  return known;
}

/** Whether the material's planes take a place away. */
function isTaken({ clippingPlanes, clipIntersection }: Material, place: Vector3): boolean {
  if (!clippingPlanes || clippingPlanes.length === 0) return false;
  const behind = (plane: Plane) => plane.distanceToPoint(place) < -1e-6;
  return clipIntersection ? clippingPlanes.every(behind) : clippingPlanes.some(behind);
}

const triple = (v: Vector3): World => [v.x, v.y, v.z];

/** Where the ray meets the face of the cut: the last of the planes' crossings before the inner wall that shows through. */
function onCut(ray: Raycaster['ray'], hit: Intersection, planes: readonly Plane[]): World {
  const crossings = planes.flatMap((plane) => {
    const at = ray.intersectPlane(plane, new Vector3());
    return at && at.distanceTo(ray.origin) <= hit.distance + 1e-6 ? [at] : [];
  });
  crossings.sort((a, b) => b.distanceTo(ray.origin) - a.distanceTo(ray.origin));
  return triple(crossings[0] ?? hit.point);
}

function onSurface(hit: Intersection, mesh: Mesh, zoom: number): MeasuredPoint {
  const { face } = hit;
  const { geometry } = mesh;
  if (!face) return { at: triple(hit.point), on: 'surface' };
  const sharp = sharpIn(geometry);
  const list = [face.a, face.b, face.c] as const;
  const position = geometry.getAttribute('position');
  const corner = (i: number) => triple(new Vector3().fromBufferAttribute(position, i).applyMatrix4(mesh.matrixWorld));
  const corners = [corner(list[0]), corner(list[1]), corner(list[2])] as const;
  const edges = [sharp[list[0]] === 1, sharp[list[1]] === 1, sharp[list[2]] === 1] as const;
  return snapped(triple(hit.point), corners, edges, reach / zoom);
}

/** The place, drawn to an edge or corner that is near; null where no part is. */
export function pickPlace(
  scene: Scene,
  camera: Camera,
  [x, y]: Pixel,
  size: { readonly width: number; readonly height: number },
): MeasuredPoint | null {
  const caster = new Raycaster();
  caster.setFromCamera(new Vector2((2 * x) / size.width - 1, 1 - (2 * y) / size.height), camera);
  const parts: Mesh[] = [];
  scene.traverseVisible((thing) => {
    if (thing instanceof Mesh && thing.userData.part === true) parts.push(thing);
  });
  for (const hit of caster.intersectObjects(parts, false)) {
    const mesh = hit.object as Mesh;
    const material = mesh.material as Material;
    if (isTaken(material, hit.point)) continue;
    if (material.side === BackSide) return { at: onCut(caster.ray, hit, material.clippingPlanes ?? []), on: 'surface' };
    return onSurface(hit, mesh, (camera as OrthographicCamera).zoom);
  }
  return null;
}
