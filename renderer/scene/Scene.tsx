/** The machine in three dimensions, drawn only when something changes. */

import { Canvas } from '@react-three/fiber';
import { useCallback, useRef, useState } from 'react';
import type { DeadSpot } from '../../core/index.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { text } from '../strings.ts';
import { CameraRig } from './CameraRig.tsx';
import { scaleLength } from './frame.ts';
import { Lights } from './Lights.tsx';
import { Machine } from './Machine.tsx';
import { NoScene } from './NoScene.tsx';
import { useMeltShown, useOpenPlanes, useSpotPlaces } from './openPlanes.ts';
import { SceneBoundary } from './SceneBoundary.tsx';
import { MarkerFollower, MarkerLayer } from './SpotMarkers.tsx';

function ScaleBar({ zoom }: { readonly zoom: number }) {
  const length = scaleLength(zoom, 140);
  return (
    <div className="scale-bar" aria-hidden="true">
      <span className="scale-line" style={{ width: `${length * zoom}px` }} />
      {length} mm
    </div>
  );
}

const noSpots: readonly DeadSpot[] = [];

/** Dead spots to be marked: those of the painted fields. */
function useShownSpots(): readonly DeadSpot[] {
  const shown = useMeltShown();
  const spots = useEvaluation((state) => (state.solved?.fields ? state.solved.dead.spots : noSpots));
  return shown ? spots : noSpots;
}

/** Canvas, scale bar, markers, and the facts that tests read. */
export default function Scene() {
  const shape = useEvaluation((state) => state.shape);
  const stale = useEvaluation((state) => state.stale);
  const spots = useShownSpots();
  const solved = useEvaluation((state) => state.solved);
  const places = useSpotPlaces(solved);
  const [azimuth = 0] = useOpenPlanes();
  const layer = useRef<HTMLDivElement>(null);
  const [painted, setPainted] = useState(0);
  const [zoom, setZoom] = useState(3);
  const [lost, setLost] = useState(false);
  const onZoom = useCallback((next: number) => setZoom(next), []);
  if (lost) return <NoScene retry={() => setLost(false)} />;
  if (!shape) return <p className="scene-waiting">{text.see.waiting}</p>;
  return (
    <div
      className="scene"
      data-mesh-revision={shape.revisionId}
      data-mesh-hash={shape.meshHash}
      data-triangles={shape.screw.indices.length / 3}
      data-all-triangles={(shape.screw.indices.length + shape.barrel.indices.length + shape.nozzle.indices.length) / 3}
      data-stale={stale}
      data-painted={painted}
    >
      <SceneBoundary>
        <Canvas
          orthographic
          frameloop="demand"
          camera={{ near: -5000, far: 10000, zoom: 3 }}
          gl={{ antialias: true, localClippingEnabled: true }}
          dpr={[1, 2]}
          aria-label={text.see.sceneLabel}
          role="img"
          onCreated={({ gl }) => {
            // A view that was taken down gives its context up too; that is no fault.
            gl.domElement.addEventListener('webglcontextlost', () => gl.domElement.isConnected && setLost(true));
          }}
        >
          <Lights />
          <Machine shape={shape} onPainted={setPainted} />
          <MarkerFollower {...{ layer, places, azimuth }} />
          <CameraRig bounds={shape.bounds} onZoom={onZoom} />
        </Canvas>
      </SceneBoundary>
      <MarkerLayer {...{ layer, spots, places }} />
      <ScaleBar zoom={zoom} />
    </div>
  );
}
