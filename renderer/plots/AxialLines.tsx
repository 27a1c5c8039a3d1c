/** Vertical lines that run through every lane along the axis: melting, the mark, the pointer. */

import type { Shape } from '../solve/protocol.ts';
import { useView } from '../store/view.ts';
import { axialToPixels } from './axialScale.ts';
import type { MeltMark } from './meltMarks.ts';

/** The lines of a lane `width` by `height` px. Only these are drawn anew while the pointer moves. */
export function AxialLines(props: {
  /** first word of the lines' classes */
  readonly kind: 'draw' | 'lane';
  readonly bounds: Shape['bounds'];
  readonly width: number;
  readonly height: number;
  readonly marks?: readonly MeltMark[];
}) {
  const { kind, bounds, width, height, marks = [] } = props;
  const mark = useView((state) => state.mark?.z ?? null);
  const hover = useView((state) => state.hoverZ);
  const x = axialToPixels(bounds, width);
  const line = (z: number, name: string, key = name) => (
    <line key={key} className={`${kind}-${name}`} x1={x(z)} x2={x(z)} y1={0} y2={height} />
  );
  return (
    <>
      {marks.map(({ z, name }) => line(z, 'melting', name))}
      {hover !== null && line(hover, 'hover')}
      {mark !== null && line(mark, 'mark')}
    </>
  );
}
