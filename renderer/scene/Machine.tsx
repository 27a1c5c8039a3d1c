/** Screw, barrel and nozzle as they stand, what is shown in them, and the marked place. */

import type { Shape } from '../solve/protocol.ts';
import { useView } from '../store/view.ts';
import { worldPerMetre } from './frame.ts';
import { GrainsInScene } from './Grains.tsx';
import { MeltFront } from './MeltFront.tsx';
import { MeltInScene } from './MeltInScene.tsx';
import { type Finish, Solid } from './Solid.tsx';
import { type SceneColours, useSceneColours } from './sceneColours.ts';
import { useScene } from './sceneStore.ts';
import { uncut, useSlice, wedge } from './slices.ts';
import { Turning } from './Turning.tsx';

/** Barrel end and nozzle share a plane; drawn in one place they would flicker through each other. m */
const hairline = 2e-5;

/** How the parts look, by their metal. */
const finishes = (colours: SceneColours, opacity: number): Record<'screw' | 'barrel' | 'nozzle', Finish> => ({
  screw: { colour: colours.screw, cutColour: colours.screwCut, metalness: 0.85, roughness: 0.32, opacity: 1 },
  barrel: { colour: colours.barrel, cutColour: colours.barrelCut, metalness: 0.7, roughness: 0.48, opacity },
  nozzle: { colour: colours.nozzle, cutColour: colours.nozzleCut, metalness: 0.85, roughness: 0.36, opacity },
});

function Mark({ radius, colour }: { readonly radius: number; readonly colour: string }) {
  const mark = useView((state) => state.mark);
  // a dead spot has its own marker, and the ring would hide what lies round it
  const hasMarker = useView((state) => state.mark?.spot !== undefined);
  if (!mark || hasMarker) return null;
  return (
    <mesh position={[0, 0, mark.z]} renderOrder={3}>
      <torusGeometry args={[radius * 1.12, radius * 0.035, 8, 64]} />
      <meshBasicMaterial color={colour} depthTest={false} transparent />
    </mesh>
  );
}

/** The machine in world units, axis to the right. */
export function Machine({ shape, onPainted }: { readonly shape: Shape; onPainted(triangles: number): void }) {
  const slice = useSlice(shape.bounds);
  const view = useView((state) => state.barrel);
  const clear = useScene((state) => state.opacity);
  const colours = useSceneColours();
  const look = finishes(colours, view === 'clear' ? clear : 1);
  const cut = slice ?? (view === 'cutaway' ? wedge : uncut);
  return (
    <group rotation={[0, Math.PI / 2, 0]} scale={worldPerMetre}>
      <Turning>
        <Solid mesh={shape.screw} finish={look.screw} cut={slice ?? uncut} />
      </Turning>
      {view !== 'hidden' && (
        <>
          <Solid mesh={shape.barrel} finish={look.barrel} cut={cut} />
          <group position={[0, 0, hairline]}>
            <Solid mesh={shape.nozzle} finish={look.nozzle} cut={cut} />
          </group>
        </>
      )}
      <GrainsInScene colours={colours} slice={slice} />
      <MeltFront colours={colours} bounds={shape.bounds} bore={shape.flightRadius} />
      <MeltInScene onPainted={onPainted} />
      <Mark radius={shape.bounds.radius} colour={colours.mark} />
    </group>
  );
}
