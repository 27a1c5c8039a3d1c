/** The laid wall cut across: lines side by side in two layers, to scale. */

import { toSi } from '../../core/index.ts';
import { formatQuantity } from '../look.ts';
import { useProject } from '../store/project.ts';
import { text } from '../strings.ts';

const words = text.printSide;

/** Size of the picture and room for the wall's measure above it, px. */
const box = { width: 300, height: 66, top: 15, side: 6 } as const;

/** More lines than this are not told apart. */
const mostLines = 24;

/** Picture of `passes` lines at `spacing` m. */
export function WallPicture({ passes, spacing }: { readonly passes: number; readonly spacing: number }) {
  const { lineWidthMm, layerHeightMm, wallThicknessMm } = useProject().print;
  if (passes > mostLines) return null;
  const step = spacing * 1000;
  const whole = Math.max(wallThicknessMm, (passes - 1) * step + lineWidthMm);
  const scale = Math.min((box.width - 2 * box.side) / whole, (box.height - box.top - 2) / (2 * layerHeightMm));
  const middle = box.width / 2;
  const first = middle - (((passes - 1) * step + lineWidthMm) * scale) / 2;
  const lefts = Array.from({ length: passes }, (_, i) => first + i * step * scale);
  const round = (Math.min(layerHeightMm, lineWidthMm) * scale) / 2;
  const ends = [middle - (wallThicknessMm * scale) / 2, middle + (wallThicknessMm * scale) / 2] as const;
  const wall = formatQuantity(toSi(wallThicknessMm, 'mm'), 'mm', 3);
  return (
    <svg
      className="wall-picture"
      viewBox={`0 0 ${box.width} ${box.height}`}
      role="img"
      aria-label={words.wall(passes, wall)}
    >
      {[0, 1].flatMap((layer) =>
        lefts.map((x) => (
          <rect
            key={`${layer}/${x}`}
            x={x}
            y={box.height - 1 - (layer + 1) * layerHeightMm * scale}
            width={lineWidthMm * scale}
            height={layerHeightMm * scale}
            rx={round}
          />
        )),
      )}
      {ends.map((x) => (
        <line key={x} x1={x} x2={x} y1={box.top - 5} y2={box.height} />
      ))}
      <text x={middle} y={box.top - 5}>
        {words.wallThickness} {wall}
      </text>
    </svg>
  );
}
