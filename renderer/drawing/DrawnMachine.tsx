/** The machine itself: solid parts hatched, the wall that melt touches drawn strongly, the screw seen from the side. */

import { memo } from 'react';
import type { Paths } from './outlines.ts';

/** Hatching of what is solid; its lines keep their distance on the screen at every zoom. */
function Hatches({ zoom }: { readonly zoom: number }) {
  const lean = { 'solid-barrel': 45, 'solid-nozzle': -45 };
  return (
    <defs>
      {Object.entries(lean).map(([id, angle]) => (
        <pattern
          key={id}
          id={id}
          width={7}
          height={7}
          patternUnits="userSpaceOnUse"
          patternTransform={`scale(${1 / zoom}) rotate(${angle})`}
        >
          <rect width={7} height={7} className={`hatch-ground ${id}`} />
          <line y2={7} x1={3.5} x2={3.5} className="hatch-line" />
        </pattern>
      ))}
    </defs>
  );
}

/** The parts, in mm; `transform` brings them to the screen. */
export const DrawnMachine = memo(function DrawnMachine(props: {
  readonly paths: Paths;
  readonly transform: string;
  readonly zoom: number;
}) {
  const { paths, transform, zoom } = props;
  return (
    <g transform={transform} className="drawn">
      <Hatches zoom={zoom} />
      <path className="drawn-solid" d={paths.barrel} fill="url(#solid-barrel)" />
      <path className="drawn-solid" d={paths.nozzle} fill="url(#solid-nozzle)" fillRule="evenodd" />
      <path className="drawn-screw" d={paths.shank} />
      <path className="drawn-screw" d={paths.cuts} />
      <path className="drawn-screw" d={paths.root} />
      <path className="drawn-crest" d={paths.crests} />
      <path className="drawn-wall" d={paths.wall} />
    </g>
  );
});
