/** What the channel holds along the axis, drawn between root and bore: granules, melt, nothing. */

import type { Prediction } from '../../core/index.ts';
import { text } from '../strings.ts';
import { type Strip, stripsOf } from './contentStrips.ts';

/** Metres to pixels, x along the axis and y from it. */
interface Scale {
  x(z: number): number;
  y(r: number): number;
}

const words = text.axial.content;

/** Dots for granules, so that colour is not the only sign. */
export function ContentPatterns() {
  return (
    <defs>
      <pattern id="granules" width="5" height="5" patternUnits="userSpaceOnUse">
        <rect className="content-granules" width="5" height="5" />
        <circle className="content-dot" cx="1.4" cy="1.4" r="1" />
        <circle className="content-dot" cx="3.9" cy="3.8" r="1" />
      </pattern>
    </defs>
  );
}

function Column({ strip, scale, side }: { readonly strip: Strip; readonly scale: Scale; readonly side: 1 | -1 }) {
  const x = scale.x(strip.from);
  const width = scale.x(strip.to) - x + 0.4;
  const band = (from: number, to: number) => {
    const [a, b] = [scale.y(side * from), scale.y(side * to)];
    return { x, width, y: Math.min(a, b), height: Math.abs(b - a) };
  };
  return (
    <>
      {strip.solidTop > strip.root && <rect fill="url(#granules)" {...band(strip.root, strip.solidTop)} />}
      {strip.meltTop > strip.solidTop && <rect className="content-melt" {...band(strip.solidTop, strip.meltTop)} />}
    </>
  );
}

/** The channel's content, above and below the axis. */
export function ChannelContent({ prediction, scale }: { readonly prediction: Prediction; readonly scale: Scale }) {
  const strips = stripsOf(prediction);
  return (
    <g>
      <title>{words.help}</title>
      {strips.flatMap((strip) =>
        ([1, -1] as const).map((side) => <Column key={`${strip.from}/${side}`} {...{ strip, scale, side }} />),
      )}
    </g>
  );
}
