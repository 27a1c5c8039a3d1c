/** Screw, barrel and nozzle as they stand, and the marked place. */

import { useFrame, useThree } from '@react-three/fiber';
import { type ReactNode, useEffect, useMemo, useRef } from 'react';
import { type Group, Plane, Vector3 } from 'three';
import type { Shape } from '../solve/protocol.ts';
import { activeRevision, useProjectState } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { worldPerMetre } from './frame.ts';
import { MeltInScene } from './MeltInScene.tsx';
import { opening } from './opening.ts';
import { useMeltShown } from './openPlanes.ts';
import { type Cut, type Finish, Solid } from './Solid.tsx';

const steel = { colour: '#a3abb4', cutColour: '#8d99a8', metalness: 0.85, roughness: 0.32, opacity: 1 };
const barrelSteel = { colour: '#73808d', cutColour: '#5d6875', metalness: 0.7, roughness: 0.48, opacity: 1 };
const copper = { colour: '#c98a55', cutColour: '#9a6237', metalness: 0.85, roughness: 0.36, opacity: 1 };

/** Barrel end and nozzle share a plane; drawn in one place they would flicker through each other. m */
const hairline = 2e-5;

const uncut: Cut = { planes: [], wedge: false };
/** What lies between the two angles is behind both planes, so it is taken out. */
const wedge: Cut = {
  planes: [
    new Plane(new Vector3(0, -Math.cos(opening[0]), Math.sin(opening[0])), 0),
    new Plane(new Vector3(0, Math.cos(opening[1]), -Math.sin(opening[1])), 0),
  ],
  wedge: true,
};

/** The slice: what lies nearer to the viewer than its plane is taken away. Painted melt lies in a plane through the axis. */
function useSlice(radius: number): Cut | null {
  const chosen = useView((state) => state.section);
  const throughAxis = useMeltShown();
  const section = chosen !== null && throughAxis ? 0 : chosen;
  return useMemo(() => {
    if (section === null) return null;
    return { planes: [new Plane(new Vector3(0, 0, -1), section * radius * worldPerMetre)], wedge: false };
  }, [section, radius]);
}

/** Turns its content about the axis at the set speed: a right-hand screw turns so that its flights move forward. */
function Turning({ children }: { readonly children: ReactNode }) {
  const group = useRef<Group>(null);
  const turning = useView((state) => state.turning);
  const invalidate = useThree((state) => state.invalidate);
  const speed = useProjectState((state) => {
    const project = state.history?.present;
    if (!project) return 0;
    return (project.process.screwSpeedRpm / 60) * (activeRevision(project).screw.hand === 'left' ? 1 : -1);
  });
  useEffect(() => {
    if (turning) invalidate();
  }, [turning, invalidate]);
  useFrame((_, delta) => {
    if (!turning || !group.current) return;
    group.current.rotation.z += 2 * Math.PI * speed * Math.min(delta, 0.25);
    invalidate();
  });
  return <group ref={group}>{children}</group>;
}

function Mark({ radius }: { readonly radius: number }) {
  const mark = useView((state) => state.mark);
  // a dead spot has its own marker, and the ring would hide what lies round it
  const hasMarker = useView((state) => state.mark?.spot !== undefined);
  if (!mark || hasMarker) return null;
  return (
    <mesh position={[0, 0, mark.z]} renderOrder={3}>
      <torusGeometry args={[radius * 1.12, radius * 0.035, 8, 64]} />
      <meshBasicMaterial color="#e0457b" depthTest={false} transparent />
    </mesh>
  );
}

/** The machine in world units, axis to the right. */
export function Machine({ shape, onPainted }: { readonly shape: Shape; onPainted(triangles: number): void }) {
  const slice = useSlice(shape.bounds.radius);
  const view = useView((state) => state.barrel);
  const opacity = view === 'clear' ? 0.16 : 1;
  const outside = (finish: Finish): Finish => ({ ...finish, opacity });
  return (
    <group rotation={[0, Math.PI / 2, 0]} scale={worldPerMetre}>
      <Turning>
        <Solid mesh={shape.screw} finish={steel} cut={slice ?? uncut} />
      </Turning>
      {view !== 'hidden' && (
        <>
          <Solid
            mesh={shape.barrel}
            finish={outside(barrelSteel)}
            cut={slice ?? (view === 'cutaway' ? wedge : uncut)}
          />
          <group position={[0, 0, hairline]}>
            <Solid mesh={shape.nozzle} finish={outside(copper)} cut={slice ?? (view === 'cutaway' ? wedge : uncut)} />
          </group>
        </>
      )}
      <MeltInScene onPainted={onPainted} />
      <Mark radius={shape.bounds.radius} />
    </group>
  );
}
