/** Names of the places where granulate softens and melts, above the plot, each with a line to its place. */

import { memo } from 'react';
import type { Shape } from '../solve/protocol.ts';
import { text } from '../strings.ts';
import { axialToPixels, sideRoom } from './axialScale.ts';
import { letterWidth, type MeltMark, spreadLabels } from './meltMarks.ts';
import { useBox } from './useBox.ts';

/** Height of the strip, and of the slanted part of the lines, px. */
const height = 20;
const slant = 6;

/** The strip; its lines go on in the plot below. */
export const MeltMarkStrip = memo(function Strip(props: {
  readonly marks: readonly MeltMark[];
  readonly bounds: Shape['bounds'];
}) {
  const { marks, bounds } = props;
  const [box, { width }] = useBox();
  const x = axialToPixels(bounds, width);
  const labels = marks.map(({ z, name }) => ({ at: x(z), width: name.length * letterWidth }));
  const lefts = spreadLabels(labels, sideRoom / 2, width - sideRoom / 2, 8);
  return (
    <div className="melt-marks" ref={box}>
      {width > 0 && (
        <svg width={width} height={height} role="img" aria-label={text.axial.marks.label}>
          {marks.map(({ name }, i) => {
            const { at, width: wide } = labels[i] ?? { at: 0, width: 0 };
            const left = lefts[i] ?? 0;
            const foot = Math.min(left + wide, Math.max(left, at));
            return (
              <g key={name}>
                <text x={left + wide / 2} y={height - slant - 3}>
                  {name}
                </text>
                <polyline points={`${foot},${height - slant} ${at},${height}`} />
              </g>
            );
          })}
        </svg>
      )}
    </div>
  );
});
