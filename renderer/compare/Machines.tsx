/** Linked views of the machines: one camera, one slice, one scale of colours. */

import { Canvas } from '@react-three/fiber';
import { type RefObject, useCallback, useMemo, useRef, useState } from 'react';
import type { Group } from 'three';
import type { Alignment, Prediction, Revision } from '../../core/index.ts';
import { worldPerMetre } from '../scene/frame.ts';
import { Lights } from '../scene/Lights.tsx';
import { MeltPaint } from '../scene/MeltPaint.tsx';
import { opening } from '../scene/opening.ts';
import { SceneBoundary } from '../scene/SceneBoundary.tsx';
import { type Cut, Solid } from '../scene/Solid.tsx';
import { useSceneColours } from '../scene/sceneColours.ts';
import { slicePlane, uncut, wedge } from '../scene/slices.ts';
import type { Shape } from '../solve/protocol.ts';
import { compareText } from '../strings/compare.ts';
import type { PartProps } from './Compare.tsx';
import { LinkedViews, type LookRequest, type MoveRequest } from './LinkedViews.tsx';
import { MachineTools, ViewLabels } from './MachineTools.tsx';
import { useCompare } from './store.ts';
import { mostViews } from './views.ts';

const words = compareText.machines;

/** How the machines are opened. */
export type Opened = 'opened' | 'sliced' | 'closed';

/** What is chosen of the views. */
export interface ViewChoice {
  readonly how: Opened;
  /** share of the greatest radius, -1 to 1, from which the slice is seen */
  readonly slice: number;
  readonly melt: boolean;
}

/** One machine to be seen. */
export interface Seen {
  readonly id: string;
  readonly name: string;
  readonly place: number;
  readonly hand: 'right' | 'left';
  readonly shape: Shape;
  readonly solved: Prediction | null;
  /** m */
  readonly shift: number;
}

const tipEndOf = ({ outline }: Shape): number => outline.inner.z.at(-1) ?? 0;

/** As `alignmentShift` of the drawings, from what is known of the solids. */
function shiftOf(base: Shape, shape: Shape, alignment: Alignment): number {
  if (alignment === 'feed') return 0;
  return alignment === 'tip' ? tipEndOf(base) - tipEndOf(shape) : base.bounds.end - shape.bounds.end;
}

/** The machines whose shape is known, at most as many as fit. */
function seenOf({ revisions, compared, base }: PartProps, alignment: Alignment): readonly Seen[] {
  const shapes = new Map(compared.flatMap(({ id, found }) => (found.shape ? [[id, found.shape] as const] : [])));
  const first = shapes.get(base ?? '') ?? [...shapes.values()][0];
  return compared
    .flatMap(({ id, found }, place): Seen[] => {
      const revision: Revision | undefined = revisions.find((candidate) => candidate.id === id);
      const shape = shapes.get(id);
      if (!revision || !shape || !first) return [];
      const solved = found.solved?.prediction ?? null;
      const { name, screw } = revision;
      return [{ id, name, place, hand: screw.hand, shape, solved, shift: shiftOf(first, shape, alignment) }];
    })
    .slice(0, mostViews);
}

/** Barrel end and nozzle share a plane; drawn in one place they would flicker through each other. m */
const hairline = 2e-5;

interface MachineProps {
  readonly seen: Seen;
  readonly choice: ViewChoice;
  /** greatest radius of all machines, m, so that one slice cuts all at one place */
  readonly radius: number;
  /** s */
  readonly meanTime: number | null;
}

/** What is taken away of a machine. */
function useCut({ how, slice, melt }: ViewChoice, seen: Seen, radius: number): Cut | null {
  return useMemo(() => {
    if (how !== 'sliced') return null;
    // painted melt lies in the plane through the axis
    return { planes: [slicePlane('upright', melt ? 0 : slice, { ...seen.shape.bounds, radius })], wedge: false };
  }, [how, slice, melt, seen, radius]);
}

const nothingCounted = () => undefined;

function ComparedMachine({ seen, choice, radius, meanTime }: MachineProps) {
  const colours = useSceneColours();
  const slice = useCut(choice, seen, radius);
  const cut = slice ?? (choice.how === 'opened' ? wedge : uncut);
  const { shape, solved, hand } = seen;
  const azimuths = choice.how === 'opened' ? opening.map((angle) => Math.PI - angle) : [Math.PI / 2, -Math.PI / 2];
  const metal = { metalness: 0.85, roughness: 0.34, opacity: 1 };
  return (
    <group rotation={[0, Math.PI / 2, 0]} scale={worldPerMetre}>
      <Solid
        mesh={shape.screw}
        finish={{ ...metal, colour: colours.screw, cutColour: colours.screwCut }}
        cut={slice ?? uncut}
      />
      <Solid
        mesh={shape.barrel}
        finish={{ ...metal, colour: colours.barrel, cutColour: colours.barrelCut }}
        cut={cut}
      />
      <group position={[0, 0, hairline]}>
        <Solid
          mesh={shape.nozzle}
          finish={{ ...metal, colour: colours.nozzle, cutColour: colours.nozzleCut }}
          cut={cut}
        />
      </group>
      {choice.melt && choice.how !== 'closed' && solved?.fields && meanTime !== null && (
        <MeltPaint
          {...{ prediction: solved, azimuths, hand, painted: 'age', old: false, onPainted: nothingCounted, meanTime }}
        />
      )}
    </group>
  );
}

/** The time that counts as 1 for all: the longest mean stay, so that no machine runs off the scale by its size alone. */
const sharedMean = (seen: readonly Seen[]): number | null => {
  const means = seen.flatMap(({ solved }) => (solved?.fields ? [solved.fields.meanTime] : []));
  return means.length > 0 ? Math.max(...means) : null;
};

interface ViewsProps {
  readonly seen: readonly Seen[];
  readonly choice: ViewChoice;
  readonly look: LookRequest;
  readonly move: MoveRequest | null;
  readonly meanTime: number | null;
  onZoom(zoom: number): void;
  onLost(): void;
}

function Views(props: ViewsProps) {
  const { seen, choice, look, move, meanTime, onZoom, onLost } = props;
  const groups: RefObject<(Group | null)[]> = useRef([]);
  groups.current.length = seen.length;
  const radius = Math.max(...seen.map(({ shape }) => shape.bounds.radius));
  const stood = seen.map(({ shape, shift }) => ({ bounds: shape.bounds, shift }));
  return (
    <Canvas
      orthographic
      frameloop="demand"
      camera={{ near: -5000, far: 10000, zoom: 3 }}
      gl={{ antialias: true, localClippingEnabled: true }}
      dpr={[1, 2]}
      aria-label={words.label(seen.map(({ id }) => id).join(', '))}
      role="img"
      onCreated={({ gl }) => {
        // A view that was taken down gives its context up too; that is no fault.
        gl.domElement.addEventListener('webglcontextlost', () => gl.domElement.isConnected && onLost());
      }}
    >
      <Lights />
      {seen.map((one, i) => (
        <group
          key={one.id}
          position={[one.shift * worldPerMetre, 0, 0]}
          ref={(group) => {
            groups.current[i] = group;
          }}
        >
          <ComparedMachine {...{ seen: one, choice, radius, meanTime }} />
        </group>
      ))}
      <LinkedViews {...{ groups, stood, look, move, onZoom }} />
    </Canvas>
  );
}

function Lost({ again }: { again(): void }) {
  return (
    <p role="alert">
      {words.lost}{' '}
      <button type="button" className="tool" onClick={again}>
        {words.again}
      </button>
    </p>
  );
}

/** The part of the dialog. */
export default function Machines(props: PartProps) {
  const alignment = useCompare((state) => state.alignment);
  const seen = useMemo(() => seenOf(props, alignment), [props, alignment]);
  const [choice, choose] = useState<ViewChoice>({ how: 'opened', slice: 0, melt: true });
  const [look, setLook] = useState<LookRequest>({ to: 'whole', count: 0 });
  const [move, setMove] = useState<MoveRequest | null>(null);
  const [zoom, setZoom] = useState(3);
  const [lost, setLost] = useState(false);
  const onZoom = useCallback((next: number) => setZoom(next), []);
  const meanTime = sharedMean(seen);
  if (seen.length === 0) return <p className="quiet">{compareText.answer.waiting}</p>;
  if (lost) return <Lost again={() => setLost(false)} />;
  return (
    <section aria-label={words.title} className="compare-machines">
      <MachineTools
        {...{ choice, choose, meanTime, look: (to) => setLook(({ count }) => ({ to, count: count + 1 })) }}
        move={(by) => setMove((before) => ({ by, count: (before?.count ?? 0) + 1 }))}
      />
      <div
        className="views-box"
        data-views={seen.length}
        data-painted={seen.filter(({ solved }) => solved?.fields).length}
      >
        <SceneBoundary>
          <Views {...{ seen, choice, look, move, meanTime, onZoom }} onLost={() => setLost(true)} />
        </SceneBoundary>
        <ViewLabels {...{ seen, choice, zoom }} />
      </div>
      <p className="quiet">
        {words.help} {props.compared.length > mostViews && words.most(mostViews)}
      </p>
    </section>
  );
}
