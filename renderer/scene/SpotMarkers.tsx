/** Numbered markers over the 3D view, one per place where melt lingers; they are buttons, so keys reach them too. */

import { Button } from 'react-aria-components';
import type { DeadSpot, SpotPlace } from '../../core/index.ts';
import { showSpot } from '../store/melt.ts';
import { useView } from '../store/view.ts';
import { meltText } from '../strings/melt.ts';
import { fanOut } from './fanOut.ts';
import { type Pixel, pixelOf, useProjection, type World, worldOf } from './projection.ts';

const words = meltText.spots;

/** Least distance of two markers, px. */
const gap = 25;

/** A place in the world. */
const inWorld = ({ z, r }: SpotPlace, azimuth: number): World =>
  worldOf(r * Math.cos(azimuth), r * Math.sin(azimuth), z);

const isIn = ([x, y]: Pixel, width: number, height: number): boolean =>
  x > -20 && y > -20 && x < width + 20 && y < height + 20;

/** The layer over the canvas: markers fanned out where they would cover each other, with lines to their places. */
export function MarkerLayer(props: {
  readonly spots: readonly DeadSpot[];
  readonly places: readonly SpotPlace[];
  readonly azimuth: number;
}) {
  const { spots, places, azimuth } = props;
  const chosen = useView((state) => state.mark?.spot);
  const view = useProjection();
  const feet = spots.map((spot, i) => pixelOf(view, inWorld(places[i] ?? spot, azimuth)));
  const heads = fanOut(feet, gap);
  if (view.width === 0) return null;
  return (
    <>
      <svg className="scene-lines" aria-hidden="true">
        {feet.map(([x, y], i) => {
          const [u, v] = heads[i] ?? [x, y];
          return Math.hypot(u - x, v - y) < 3 ? null : (
            <g key={`${spots[i]?.part} ${spots[i]?.where}`}>
              <line className="leader" x1={x} y1={y} x2={u} y2={v} />
              <circle className="leader-foot" cx={x} cy={y} r={2.5} />
            </g>
          );
        })}
      </svg>
      <div className="spot-layer">
        {spots.map((spot, index) => {
          const number = index + 1;
          const head = heads[index] ?? [0, 0];
          return (
            <div
              key={`${spot.part} ${spot.where}`}
              className="spot-anchor"
              style={{
                transform: `translate(${head[0].toFixed(1)}px, ${head[1].toFixed(1)}px)`,
                visibility: isIn(head, view.width, view.height) ? 'visible' : 'hidden',
              }}
            >
              <Button
                className={number === chosen ? 'spot-marker chosen' : 'spot-marker'}
                aria-label={words.marker(number, spot.where)}
                onPress={() => showSpot(number, spot.where, places[index] ?? spot)}
              >
                <span>{number}</span>
              </Button>
            </div>
          );
        })}
      </div>
    </>
  );
}
