/** A handle that pulls one dimension, by pointer or by keys. */

import { type KeyboardEvent, memo, type PointerEvent, useState } from 'react';
import { fieldRange } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { currentProject } from '../store/project.ts';
import { drawingText } from '../strings/drawing.ts';
import { followPointer } from './followPointer.ts';
import { limitsOf } from './limits.ts';
import { mayChange, showField, stepDimension, stepName } from './pulling.ts';
import { drawingStore, setDrawing, useDrawing } from './store.ts';
import type { Dimension, Range } from './types.ts';
import type { ToPixels } from './viewport.ts';
import { writeValue } from './write.ts';

/** Handles at one place stand this far from it, px. */
const asidePx = 8;

/** Where a dimension's handle stands on the screen, px. */
export const seatOf = ({ grip }: Dimension, at: ToPixels): { readonly x: number; readonly y: number } => ({
  x: at.x(grip.z) + asidePx * grip.aside,
  y: at.y(grip.r),
});

const shapes = {
  z: 'M-6.5 0L-2 -4.5V4.5ZM6.5 0L2 -4.5V4.5Z',
  r: 'M0 -6.5L-4.5 -2H4.5ZM0 6.5L-4.5 2H4.5Z',
} as const;

/** The range that assistive technology is told: the machine's own limits while the handle is in hand, else the file's. */
function useRange(dimension: Dimension) {
  const [limits, setLimits] = useState<Range | null>(null);
  const find = () => {
    const project = currentProject();
    if (project) setLimits(limitsOf(project, dimension, drawingStore.getState().manners));
  };
  const format = fieldRange(currentProject(), dimension.path);
  const wide = dimension.range ?? { min: format?.least ?? 0, max: format?.most ?? 0 };
  return { range: limits ?? wide, find, forget: () => setLimits(null) };
}

const keySteps: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
};

function onKey(event: KeyboardEvent, dimension: Dimension): void {
  const step = keySteps[event.key];
  if (step !== undefined) stepDimension(dimension, event.shiftKey && Math.abs(step) === 1 ? 10 * step : step, event);
  else if (event.key === 'Enter' && mayChange()) setDrawing({ typing: dimension.id });
  else return;
  event.preventDefault();
  event.stopPropagation();
}

interface GripProps {
  readonly dimension: Dimension;
  readonly x: number;
  readonly y: number;
  readonly zoom: number;
  readonly locked: boolean;
  /** another handle stands here; this one shows when it has the focus */
  readonly hidden: boolean;
  onSeek(dimension: Dimension): void;
}

/** What the pointer and the focus do at a handle. */
function useActs({ dimension, zoom, onSeek }: GripProps, find: () => void) {
  const down = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.preventDefault();
    event.currentTarget.focus({ preventScroll: true });
    followPointer(dimension, event, zoom);
  };
  const focus = () => {
    showField(dimension);
    find();
    onSeek(dimension);
  };
  return { down, focus };
}

/** The handle at its place on the screen, px. */
export const GripHandle = memo(function GripHandle(props: GripProps) {
  const { dimension, x, y, locked, hidden } = props;
  const { grip, spec, value, group } = dimension;
  const look = useLook();
  const { range, find, forget } = useRange(dimension);
  const { down, focus } = useActs(props, find);
  const isPulled = useDrawing((state) => state.pull?.dimension.id === dimension.id);
  const write = (number: number) => writeValue(number, spec, look);
  const state = `${isPulled ? 'pulled' : hidden ? 'crowded' : ''} ${locked ? 'locked' : ''}`;
  return (
    <g
      role="slider"
      tabIndex={0}
      className={`grip ${group} ${grip.axis} ${state}`}
      transform={`translate(${x} ${y})`}
      data-grip={dimension.id}
      aria-label={stepName(dimension)}
      aria-orientation={grip.axis === 'z' ? 'horizontal' : 'vertical'}
      aria-valuenow={value}
      aria-valuemin={range.min}
      aria-valuemax={range.max}
      aria-valuetext={drawingText.valueText(write(value), drawingText.between(write(range.min), write(range.max)))}
      aria-disabled={locked}
      onPointerDown={down}
      onKeyDown={(event) => onKey(event, dimension)}
      onFocus={focus}
      onBlur={forget}
    >
      <title>{`${stepName(dimension)}: ${write(value)}`}</title>
      <circle className="grip-hit" r={9} />
      <circle className="grip-ring" r={8.5} />
      <path className="grip-mark" d={shapes[grip.axis]} />
    </g>
  );
});
