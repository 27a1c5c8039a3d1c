/** One solid part: its outside, and a flat face where a cut opens it. */

import { useEffect, useMemo, useRef } from 'react';
import {
  BackSide,
  BufferAttribute,
  BufferGeometry,
  FrontSide,
  type Material,
  MeshLambertMaterial,
  MeshStandardMaterial,
  type Plane,
} from 'three';
import type { DrawnMesh } from '../solve/protocol.ts';
import { coarseIndex } from './coarseIndex.ts';
import { useScene } from './sceneStore.ts';

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

/** Most triangles of one part while the view moves in software. */
const mostMoving = 45_000;

/** The part's body; while the view moves, one of fewer triangles over the same vertices, made when first needed. */
function useBody(mesh: DrawnMesh): BufferGeometry {
  const fine = useGeometry(mesh);
  const moving = useScene((state) => state.moving);
  const coarse = useRef<{ readonly of: DrawnMesh; readonly body: BufferGeometry } | null>(null);
  useEffect(() => () => coarse.current?.body.dispose(), []);
  if (!moving || mesh.indices.length / 3 <= mostMoving) return fine;
  if (coarse.current?.of !== mesh) {
    coarse.current?.body.dispose();
    const body = new BufferGeometry();
    for (const name of ['position', 'normal']) body.setAttribute(name, fine.getAttribute(name));
    body.setIndex(new BufferAttribute(coarseIndex(mesh, mostMoving), 1));
    body.boundingSphere = fine.boundingSphere;
    coarse.current = { of: mesh, body };
  }
  return coarse.current.body;
}

/** Places on it can be measured. */
const isPart = { part: true };

/** Materials that live as long as what they are made from. */
function useKept<T extends Material>(make: () => T, made: readonly unknown[]): T {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what the material is made from
  const material = useMemo(make, made);
  useEffect(() => () => material.dispose(), [material]);
  return material;
}

/** Metal at rest; while the view moves in software, plain light that costs a fraction. Both stay compiled. */
function useOutside(finish: Finish, cut: Cut): Material {
  const { colour, metalness, roughness, opacity } = finish;
  const clear = opacity < 1;
  const shared = {
    ...{ color: colour, opacity, transparent: clear, depthWrite: !clear, side: FrontSide },
    ...{ clippingPlanes: [...cut.planes], clipIntersection: cut.wedge },
  };
  const made = [colour, metalness, roughness, opacity, cut];
  const metal = useKept(() => new MeshStandardMaterial({ ...shared, metalness, roughness }), made);
  const plain = useKept(() => new MeshLambertMaterial({ ...shared, emissive: colour, emissiveIntensity: 0.25 }), made);
  return useScene((state) => state.moving) ? plain : metal;
}

/** The part; where it is cut, inner faces are drawn flat so that the opened solid looks filled. */
export function Solid(props: { readonly mesh: DrawnMesh; readonly finish: Finish; readonly cut: Cut }) {
  const { mesh, finish, cut } = props;
  const geometry = useBody(mesh);
  const clear = finish.opacity < 1;
  const outside = useOutside(finish, cut);
  return (
    <>
      <mesh geometry={geometry} material={outside} renderOrder={clear ? 2 : 0} userData={isPart} />
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
