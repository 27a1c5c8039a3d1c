/** The machine in three dimensions, drawn only when something changes. */

import { Canvas } from '@react-three/fiber';
import { type KeyboardEvent, useCallback, useState } from 'react';
import type { DeadSpot } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { flyTo } from '../store/view.ts';
import { sceneText } from '../strings/scene.ts';
import { text } from '../strings.ts';
import { CameraRig } from './CameraRig.tsx';
import { drawsInSoftware } from './canDraw.ts';
import { Followers } from './Followers.tsx';
import { Lights } from './Lights.tsx';
import { Machine } from './Machine.tsx';
import { moveOfKey } from './moveKeys.ts';
import { NoScene } from './NoScene.tsx';
import { Overlay } from './Overlay.tsx';
import { useMeltShown, useOpenPlanes, useSpotPlaces } from './openPlanes.ts';
import { SceneBoundary } from './SceneBoundary.tsx';
import { MarkerLayer } from './SpotMarkers.tsx';
import { scaleBarShape } from './scaleBar.ts';
import { moveCamera, setScene, useScene } from './sceneStore.ts';
import { passMessages } from './threeMessages.ts';
import { restRatio } from './useCoarse.ts';
import { usePlacing } from './useGrains.ts';

// before the first canvas makes its clock
passMessages();

function ScaleBar({ zoom }: { readonly zoom: number }) {
  const { width, label } = scaleBarShape(1000 * zoom, 140, useLook());
  return (
    <div className="scale-bar" aria-hidden="true">
      <span className="scale-line" style={{ width: `${width}px` }} />
      {label}
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

/** Keys that move the camera, while the view has the focus; Escape ends measuring. */
function onKey(event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key === 'Escape') setScene({ measuring: false, points: [] });
  const move = moveOfKey(event.key, event.shiftKey);
  if (!move && event.key !== 'Home') return;
  event.preventDefault();
  if (move) moveCamera(move);
  else flyTo('whole');
}

/** Canvas, scale bar, markers, and the facts that tests read. */
export default function Scene() {
  const shape = useEvaluation((state) => state.shape);
  const stale = useEvaluation((state) => state.stale);
  const spots = useShownSpots();
  const solved = useEvaluation((state) => state.solved);
  const places = useSpotPlaces(solved);
  const [azimuth = 0] = useOpenPlanes();
  const measuring = useScene((state) => state.measuring);
  usePlacing();
  const [painted, setPainted] = useState(0);
  const [zoom, setZoom] = useState(3);
  const [lost, setLost] = useState(false);
  const onZoom = useCallback((next: number) => setZoom(next), []);
  if (lost) return <NoScene retry={() => setLost(false)} />;
  if (!shape) return <p className="scene-waiting">{text.see.waiting}</p>;
  return (
    <div
      className={measuring ? 'scene measuring' : 'scene'}
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
          gl={{ antialias: !drawsInSoftware(), localClippingEnabled: true }}
          dpr={restRatio()}
          aria-label={sceneText.label}
          role="application"
          tabIndex={0}
          onKeyDown={onKey}
          onCreated={({ gl }) => {
            // A view that was taken down gives its context up too; that is no fault.
            gl.domElement.addEventListener('webglcontextlost', () => gl.domElement.isConnected && setLost(true));
          }}
        >
          <Lights />
          <Machine shape={shape} onPainted={setPainted} />
          <Followers shape={shape} />
          <CameraRig bounds={shape.bounds} onZoom={onZoom} />
        </Canvas>
      </SceneBoundary>
      <Overlay shape={shape} />
      <MarkerLayer {...{ spots, places, azimuth }} />
      <ScaleBar zoom={zoom} />
    </div>
  );
}
