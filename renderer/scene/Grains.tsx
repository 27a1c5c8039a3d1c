/** Granules to scale in the hopper's mouth, the opening and the channel; those that do not fit coloured and outlined. */

import { useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { BackSide, CapsuleGeometry, Color, DoubleSide, type InstancedMesh, Matrix4, Quaternion, Vector3 } from 'three';
import type { GrainPicture } from '../../core/index.ts';
import { worldOf } from './projection.ts';
import type { Cut } from './Solid.tsx';
import type { SceneColours } from './sceneColours.ts';
import { useGrainsShown, usePlacedGrains } from './useGrains.ts';

const up = new Vector3(0, 1, 0);

/** Which granules are drawn: all whose middle the slice leaves standing. */
function kept({ count, middles, tooLarge }: GrainPicture, slice: Cut | null, misfits: boolean): number[] {
  const place = new Vector3();
  const stands = (i: number) => {
    place.set(...worldOf(middles[3 * i], middles[3 * i + 1], middles[3 * i + 2]));
    return slice === null || slice.planes.every((plane) => plane.distanceToPoint(place) >= 0);
  };
  return Array.from({ length: count }, (_, i) => i).filter((i) => (!misfits || tooLarge[i] === 1) && stands(i));
}

/** Sets place, direction and size of every instance. */
function place(mesh: InstancedMesh, picture: GrainPicture, list: readonly number[], swell: number): void {
  const { middles, along, diameters } = picture;
  const matrix = new Matrix4();
  const turn = new Quaternion();
  list.forEach((i, n) => {
    const at = 3 * i;
    turn.setFromUnitVectors(up, new Vector3(along[at], along[at + 1], along[at + 2]).normalize());
    const size = diameters[i] * swell;
    matrix.compose(new Vector3(middles[at], middles[at + 1], middles[at + 2]), turn, new Vector3(size, size, size));
    mesh.setMatrixAt(n, matrix);
  });
  mesh.instanceMatrix.needsUpdate = true;
  mesh.computeBoundingSphere();
}

function useShape(aspect: number): CapsuleGeometry {
  const shape = useMemo(() => new CapsuleGeometry(0.5, Math.max(1e-3, aspect - 1), 3, 9), [aspect]);
  useEffect(() => () => shape.dispose(), [shape]);
  return shape;
}

interface Part {
  readonly picture: GrainPicture;
  readonly list: readonly number[];
  readonly colours: SceneColours;
}

function Bodies({ picture, list, colours }: Part) {
  const mesh = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  const shape = useShape(picture.aspect);
  useEffect(() => {
    if (!mesh.current) return;
    place(mesh.current, picture, list, 1);
    const [fits, misfit] = [new Color(colours.grain), new Color(colours.misfit)];
    list.forEach((i, n) => {
      mesh.current?.setColorAt(n, picture.tooLarge[i] === 1 ? misfit : fits);
    });
    if (mesh.current.instanceColor) mesh.current.instanceColor.needsUpdate = true;
    invalidate();
  }, [picture, list, colours, invalidate]);
  return (
    <instancedMesh ref={mesh} args={[shape, undefined, list.length]} key={list.length}>
      <meshLambertMaterial />
    </instancedMesh>
  );
}

/** A somewhat larger body seen from inside: what shows of it is an outline. */
function Outlines({ picture, list, colours }: Part) {
  const mesh = useRef<InstancedMesh>(null);
  const shape = useShape(picture.aspect);
  useEffect(() => {
    if (mesh.current) place(mesh.current, picture, list, 1.14);
  }, [picture, list]);
  if (list.length === 0) return null;
  return (
    <instancedMesh ref={mesh} args={[shape, undefined, list.length]} key={list.length}>
      <meshBasicMaterial color={colours.outline} side={BackSide} />
    </instancedMesh>
  );
}

function Mouth({ picture, colour }: { readonly picture: GrainPicture; readonly colour: string }) {
  const { seat, z, low, high, height } = picture.mouth;
  return (
    <mesh position={[0, seat + height / 2, z]} renderOrder={2}>
      <cylinderGeometry args={[high, low, height, 40, 1, true]} />
      <meshBasicMaterial color={colour} transparent opacity={0.22} side={DoubleSide} depthWrite={false} />
    </mesh>
  );
}

/** The granules while they are shown. */
export function GrainsInScene({ colours, slice }: { readonly colours: SceneColours; readonly slice: Cut | null }) {
  const shown = useGrainsShown();
  const { picture } = usePlacedGrains();
  const list = useMemo(() => (picture ? kept(picture, slice, false) : []), [picture, slice]);
  const misfits = useMemo(() => (picture ? kept(picture, slice, true) : []), [picture, slice]);
  if (!shown || !picture || picture.tooFine) return null;
  return (
    <>
      <Bodies {...{ picture, list, colours }} />
      <Outlines {...{ picture, list: misfits, colours }} />
      <Mouth picture={picture} colour={colours.hopper} />
    </>
  );
}
