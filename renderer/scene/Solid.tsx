/** One solid part: its outside, and a flat face where a cut opens it. */

import { useEffect, useMemo } from 'react';
import { BackSide, BufferAttribute, BufferGeometry, FrontSide, type Plane } from 'three';
import type { DrawnMesh } from '../solve/protocol.ts';

/** Planes that take material away: a wedge is taken where it lies behind all of them, else each takes its side. */
export interface Cut {
  readonly planes: readonly Plane[];
  readonly wedge: boolean;
}

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
    made.setIndex(new BufferAttribute(mesh.indices, 1));
    made.computeBoundingSphere();
    return made;
  }, [mesh]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

/** Places on it can be measured. */
const isPart = { part: true };

/** The part; where it is cut, inner faces are drawn flat so that the opened solid looks filled. */
export function Solid(props: { readonly mesh: DrawnMesh; readonly finish: Finish; readonly cut: Cut }) {
  const { mesh, finish, cut } = props;
  const geometry = useGeometry(mesh);
  const clear = finish.opacity < 1;
  return (
    <>
      <mesh geometry={geometry} renderOrder={clear ? 2 : 0} userData={isPart}>
        <meshStandardMaterial
          color={finish.colour}
          metalness={finish.metalness}
          roughness={finish.roughness}
          opacity={finish.opacity}
          transparent={clear}
          depthWrite={!clear}
          side={FrontSide}
          clippingPlanes={[...cut.planes]}
          clipIntersection={cut.wedge}
        />
      </mesh>
      {cut.planes.length > 0 && !clear && (
        <mesh geometry={geometry} userData={isPart}>
          <meshBasicMaterial
            color={finish.cutColour}
            side={BackSide}
            clippingPlanes={[...cut.planes]}
            clipIntersection={cut.wedge}
          />
        </mesh>
      )}
    </>
  );
}
