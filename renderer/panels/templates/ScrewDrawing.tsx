/** A screw from the side, drawn from its sections. */

import { type Revision, type ScrewPicture, screwPicture } from '../../../core/index.ts';

/** Points of an outline as an SVG list. */
const listed = (points: readonly (readonly [number, number])[]): string =>
  points.map((point) => point.join(',')).join(' ');

function Pass({ pass, flightMm }: { readonly pass: ScrewPicture['passes'][number]; readonly flightMm: number }) {
  const { topMm, bottomMm, landMm, rootWidthMm, rootMm } = pass;
  const half = landMm / 2;
  const edge = (zMm: number, side: 1 | -1): (readonly [number, number])[] => [
    [zMm - rootWidthMm / 2, side * rootMm],
    [zMm - half, side * flightMm],
    [zMm + half, side * flightMm],
    [zMm + rootWidthMm / 2, side * rootMm],
  ];
  const band = [
    [topMm - half, -flightMm],
    [topMm + half, -flightMm],
    [bottomMm + half, flightMm],
    [bottomMm - half, flightMm],
  ] as const;
  return (
    <>
      <polygon className="screw-flank" points={listed(edge(topMm, -1))} />
      <polygon className="screw-flank" points={listed(edge(bottomMm, 1))} />
      <polygon className="screw-land" points={listed(band)} />
    </>
  );
}

/** The drawing, true to scale: barrel bore, core, tip and the passes of the flight. */
export function ScrewDrawing(props: {
  readonly screw: Pick<Revision['screw'], 'sections' | 'tip'>;
  readonly boreMm: number;
  readonly barrelLengthMm: number;
  readonly clearanceMm: number;
  readonly label: string;
}) {
  const { screw, boreMm, barrelLengthMm, clearanceMm, label } = props;
  const picture = screwPicture(screw, boreMm, clearanceMm);
  const wall = 0.12 * boreMm;
  const width = Math.max(barrelLengthMm, picture.lengthMm);
  const outer = boreMm / 2 + wall;
  const lower = picture.core.map(([z, r]) => [z, r] as const);
  const upper = picture.core.map(([z, r]) => [z, -r] as const).reverse();
  return (
    <svg
      className="screw-drawing"
      viewBox={`${-wall} ${-outer} ${width + 2 * wall} ${2 * outer}`}
      role="img"
      aria-label={label}
    >
      <rect className="screw-wall" x={0} y={-outer} width={barrelLengthMm} height={wall} />
      <rect className="screw-wall" x={0} y={boreMm / 2} width={barrelLengthMm} height={wall} />
      <polygon className="screw-core" points={listed([...lower, ...upper])} />
      {picture.passes.map((pass) => (
        <Pass key={pass.topMm} pass={pass} flightMm={picture.flightMm} />
      ))}
    </svg>
  );
}
