/** Numbered markers over the 3D view, one per place where melt lingers; they are buttons, so keys reach them too. */

import { useFrame } from '@react-three/fiber';
import { type RefObject, useRef } from 'react';
import { Button } from 'react-aria-components';
import { Vector3 } from 'three';
import type { DeadSpot, SpotPlace } from '../../core/index.ts';
import { showSpot } from '../store/melt.ts';
import { useView } from '../store/view.ts';
import { meltText } from '../strings/melt.ts';
import { worldPerMetre } from './frame.ts';

const words = meltText.spots;

/** A place in the world: the machine's axis lies along x, its +y is up. */
function inWorld({ z, r }: SpotPlace, azimuth: number): Vector3 {
  const [x, y] = [Math.cos(azimuth), Math.sin(azimuth)];
  return new Vector3(z, r * y, -r * x).multiplyScalar(worldPerMetre);
}

/** Keeps the markers over their places; lives inside the canvas, where frames are drawn. */
export function MarkerFollower(props: {
  readonly layer: RefObject<HTMLDivElement | null>;
  readonly places: readonly SpotPlace[];
  readonly azimuth: number;
}) {
  const place = useRef(new Vector3());
  useFrame(({ camera, size }) => {
    const markers = props.layer.current?.children;
    if (!markers) return;
    props.places.forEach((spot, index) => {
      const marker = markers[index];
      if (!(marker instanceof HTMLElement)) return;
      place.current.copy(inWorld(spot, props.azimuth)).project(camera);
      const [x, y] = [((place.current.x + 1) / 2) * size.width, ((1 - place.current.y) / 2) * size.height];
      const inside = x > -20 && y > -20 && x < size.width + 20 && y < size.height + 20;
      marker.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
      marker.style.visibility = inside ? 'visible' : 'hidden';
    });
  });
  return null;
}

/** The layer over the canvas. */
export function MarkerLayer(props: {
  readonly layer: RefObject<HTMLDivElement | null>;
  readonly spots: readonly DeadSpot[];
  readonly places: readonly SpotPlace[];
}) {
  const chosen = useView((state) => state.mark?.spot);
  return (
    <div className="spot-layer" ref={props.layer}>
      {props.spots.map((spot, index) => {
        const number = index + 1;
        return (
          <div key={`${spot.part} ${spot.where}`} className="spot-anchor">
            <Button
              className={number === chosen ? 'spot-marker chosen' : 'spot-marker'}
              aria-label={words.marker(number, spot.where)}
              onPress={() => showSpot(number, spot.where, props.places[index] ?? spot)}
            >
              <span>{number}</span>
            </Button>
          </div>
        );
      })}
    </div>
  );
}
