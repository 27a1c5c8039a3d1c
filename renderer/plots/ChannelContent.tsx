/** What the channel holds along the axis, drawn between root and bore: granules, melt, nothing. */

import { useMemo } from 'react';
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

/** One path for all strips, above and below the axis; `band` picks the radii between which it is filled. */
function pathOf(strips: readonly Strip[], scale: Scale, band: (strip: Strip) => readonly [number, number]): string {
  const pieces: string[] = [];
  for (const strip of strips) {
    const [inner, outer] = band(strip);
    if (!(outer > inner)) continue;
    const [x, wide] = [scale.x(strip.from), scale.x(strip.to) - scale.x(strip.from) + 0.4];
    for (const side of [1, -1]) {
      const [a, b] = [scale.y(side * inner), scale.y(side * outer)];
      pieces.push(`M${x.toFixed(1)} ${a.toFixed(1)}h${wide.toFixed(1)}V${b.toFixed(1)}h${(-wide).toFixed(1)}z`);
    }
  }
  return pieces.join('');
}

/** The channel's content, above and below the axis: two paths, made once per prediction and size. */
export function ChannelContent({ prediction, scale }: { readonly prediction: Prediction; readonly scale: Scale }) {
  const [granules, melt] = useMemo(() => {
    const strips = stripsOf(prediction);
    return [
      pathOf(strips, scale, ({ root, solidTop }) => [root, solidTop]),
      pathOf(strips, scale, ({ solidTop, meltTop }) => [solidTop, meltTop]),
    ];
  }, [prediction, scale]);
  return (
    <g>
      <title>{words.help}</title>
      <path fill="url(#granules)" d={granules} />
      <path className="content-melt" d={melt} />
    </g>
  );
}
