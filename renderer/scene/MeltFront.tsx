/** Rings where the granulate softens, first melts and is molten, and a veil over the channel in between. */

import { DoubleSide } from 'three';
import type { Bounds } from '../solve/protocol.ts';
import { useFrontMarks } from './frontMarks.ts';
import type { SceneColours } from './sceneColours.ts';

/** Rings and veils; `bore` is the radius up to which the channel reaches, m. */
export function MeltFront(props: { readonly colours: SceneColours; readonly bounds: Bounds; readonly bore: number }) {
  const { colours, bounds, bore } = props;
  const marks = useFrontMarks();
  const hues = [colours.soft, colours.melting, colours.molten].slice(-marks.length);
  return marks.map(({ z, name }, i) => {
    const next = marks[i + 1];
    return (
      <group key={name}>
        <mesh position={[0, 0, z]} renderOrder={3}>
          <torusGeometry args={[bounds.radius * 1.04, bounds.radius * 0.028, 6, 56]} />
          <meshBasicMaterial color={hues[i] ?? colours.melting} />
        </mesh>
        {next && next.z > z && (
          <mesh position={[0, 0, (z + next.z) / 2]} rotation={[Math.PI / 2, 0, 0]} renderOrder={2}>
            <cylinderGeometry args={[bore * 0.99, bore * 0.99, next.z - z, 40, 1, true]} />
            <meshBasicMaterial
              color={hues[i] ?? colours.melting}
              transparent
              opacity={0.3}
              side={DoubleSide}
              depthWrite={false}
            />
          </mesh>
        )}
      </group>
    );
  });
}
