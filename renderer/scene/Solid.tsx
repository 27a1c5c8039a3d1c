/** One solid part: its outside, and a flat face where a slice opens it. */

import { useEffect, useMemo } from 'react';
import { BackSide, BufferAttribute, BufferGeometry, FrontSide, type Plane } from 'three';
import type { DrawnMesh } from '../solve/protocol.ts';

/** How a part looks. */
export interface Finish {
  readonly colour: string;
  readonly cutColour: string;
  readonly metalness: number;
  readonly roughness: number;
  /** 1 = solid */
  readonly opacity: number;
}

function useGeometry(mesh: DrawnMesh): BufferGeometry {
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(mesh.positions, 3));
    made.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
    made.computeBoundingSphere();
    return made;
  }, [mesh]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

/** The part; with a slice, inner faces are drawn flat so that the opened solid looks filled. */
export function Solid(props: { readonly mesh: DrawnMesh; readonly finish: Finish; readonly slice: readonly Plane[] }) {
  const { mesh, finish, slice } = props;
  const geometry = useGeometry(mesh);
  const clear = finish.opacity < 1;
  return (
    <>
      <mesh geometry={geometry} renderOrder={clear ? 2 : 0}>
        <meshStandardMaterial
          color={finish.colour}
          metalness={finish.metalness}
          roughness={finish.roughness}
          opacity={finish.opacity}
          transparent={clear}
          depthWrite={!clear}
          side={FrontSide}
          clippingPlanes={[...slice]}
        />
      </mesh>
      {slice.length > 0 && !clear && (
        <mesh geometry={geometry}>
          <meshBasicMaterial color={finish.cutColour} side={BackSide} clippingPlanes={[...slice]} />
        </mesh>
      )}
    </>
  );
}
