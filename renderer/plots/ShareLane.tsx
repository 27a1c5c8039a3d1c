/** How full the channel is and how much of it is molten, along the axis, 0 to 100 %, to the scale of the plot above. */

import { memo } from 'react';
import type { Shape } from '../solve/protocol.ts';
import { text } from '../strings.ts';
import { AxialLines } from './AxialLines.tsx';
import { axialToPixels, sideRoom } from './axialScale.ts';
import type { AxialSeries } from './axialSeries.ts';
import type { MeltMark } from './meltMarks.ts';
import { useBox } from './useBox.ts';

const words = text.axial;

/** Room above the lane for half a line of text, and below, px. */
const edge = { top: 6, bottom: 7 } as const;

/** Runs of points that have a value, as polyline text. */
function runsOf(z: readonly number[], values: readonly (number | null)[], place: (z: number, v: number) => string) {
  const runs: string[][] = [];
  let open = false;
  values.forEach((value, i) => {
    if (value !== null) {
      if (!open) runs.push([]);
      runs.at(-1)?.push(place(z[i] ?? 0, value));
    }
    open = value !== null;
  });
  return runs.map((run) => run.join(' '));
}

interface LaneProps {
  readonly series: AxialSeries;
  readonly bounds: Shape['bounds'];
  readonly width: number;
  readonly height: number;
}

/** What does not change under the pointer. */
const Lane = memo(function Curves({ series, bounds, width, height }: LaneProps) {
  const x = axialToPixels(bounds, width);
  const y = (share: number) => edge.top + (1 - share / 100) * (height - edge.top - edge.bottom);
  const place = (z: number, share: number) => `${x(z / 1000).toFixed(1)},${y(share).toFixed(1)}`;
  const area = (points: string) => {
    const [first = '', last = ''] = [points.split(' ')[0], points.split(' ').at(-1)];
    return `${first.split(',')[0]},${y(0)} ${points} ${last.split(',')[0]},${y(0)}`;
  };
  const filled = runsOf(series.z, series.filled, place);
  const molten = runsOf(series.z, series.molten, place);
  const [left, right] = [sideRoom, width - sideRoom];
  return (
    <>
      {[0, 50, 100].map((share) => (
        <line key={share} className="lane-grid" x1={left} x2={right} y1={y(share)} y2={y(share)} />
      ))}
      {[0, 100].map((share) => (
        <text key={share} className="lane-scale" x={left - 7} y={y(share) + 4}>
          {share} %
        </text>
      ))}
      <clipPath id="lane-room">
        <rect x={left} y={0} width={Math.max(0, right - left)} height={height} />
      </clipPath>
      {filled.map((points) => (
        <g clipPath="url(#lane-room)" key={points.slice(0, 20)}>
          <polygon className="lane-filled-area" points={area(points)} />
          <polyline className="lane-filled" points={points} />
        </g>
      ))}
      {molten.map((points) => (
        <polyline key={points.slice(0, 20)} clipPath="url(#lane-room)" className="lane-molten" points={points} />
      ))}
    </>
  );
});

/** The lane. */
export function ShareLane(props: {
  readonly series: AxialSeries;
  readonly bounds: Shape['bounds'];
  readonly marks: readonly MeltMark[];
}) {
  const { series, bounds, marks } = props;
  const [box, { width, height }] = useBox();
  return (
    <div className="share-lane" ref={box}>
      {width > 0 && (
        <svg width={width} height={height} role="img" aria-label={words.lane}>
          <Lane {...{ series, bounds, width, height }} />
          <AxialLines kind="lane" {...{ bounds, width, height, marks }} />
        </svg>
      )}
    </div>
  );
}
