/** What is being pulled: its value now, what it was, the difference, and what holds it. */

import { useLook } from '../look.ts';
import type { BoxSize } from '../plots/useBox.ts';
import { drawingText } from '../strings/drawing.ts';
import { stepName } from './pulling.ts';
import { useDrawing } from './store.ts';
import { clean, type Dimension } from './types.ts';
import type { ToPixels } from './viewport.ts';
import { writeValue } from './write.ts';

/** Where the box stands beside the handle, px, and how much room it needs. */
const away = { x: 14, y: 16, width: 230, height: 78 } as const;

/** The box beside the handle; `dimension` as it stands now. */
export function Readout(props: { readonly dimension: Dimension; readonly at: ToPixels; readonly size: BoxSize }) {
  const { dimension, at, size } = props;
  const look = useLook();
  const pull = useDrawing((state) => state.pull);
  if (!pull) return null;
  const { spec } = pull.dimension;
  const write = (value: number) => writeValue(value, spec, look);
  const difference = clean(pull.value - pull.dimension.value);
  const [x, y] = [at.x(dimension.grip.z), at.y(dimension.grip.r)];
  const left = x + away.x + away.width > size.width ? Math.max(4, x - away.x - away.width) : x + away.x;
  const top = Math.max(4, Math.min(size.height - away.height, y + away.y));
  return (
    <div className="pull-readout" style={{ left, top }} role="status" data-testid="pull">
      <span className="quiet">{stepName(pull.dimension)}</span>
      <span>
        <b>{write(pull.value)}</b>{' '}
        <span className="quiet">
          {drawingText.was(write(pull.dimension.value), `${difference < 0 ? '−' : '+'}${write(Math.abs(difference))}`)}
        </span>
      </span>
      {pull.magnet && <span className="pull-magnet">{drawingText.sticks(pull.magnet.name)}</span>}
      {pull.why && <span className="issue">{pull.why}</span>}
    </div>
  );
}
