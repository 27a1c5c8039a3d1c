/** Dimension lines with arrows, leaders, and their numbers. A click on a number begins to type it. */

import { pathKey } from '../store/path.ts';
import { useView } from '../store/view.ts';
import { drawingText } from '../strings/drawing.ts';
import type { Placed } from './layout.ts';
import { mayChange, showField, stepName } from './pulling.ts';
import { setDrawing, useDrawing } from './store.ts';

/** Arrow heads: length and half width, px. */
const head = { long: 8, wide: 2.6 } as const;
/** Shorter dimension lines carry their arrows outside. */
const insideFrom = 22;

const arrow = (x: number, y: number, way: 1 | -1): string =>
  `M${x} ${y}l${way * head.long} ${head.wide}v${-2 * head.wide}Z`;

function Line({ from, to, y, text }: { from: number; to: number; y: number; text: { x: number; end: number } }) {
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const inside = high - low >= insideFrom;
  const tail = inside ? 0 : head.long + 5;
  // a number beside the line stands at its end, which reaches up to it
  const [start, end] = [Math.min(low - tail, text.end), Math.max(high + tail, text.x)];
  return (
    <>
      <line className="dim-line" x1={start} x2={end} y1={y} y2={y} />
      <path className="dim-arrow" d={arrow(low, y, inside ? 1 : -1) + arrow(high, y, inside ? -1 : 1)} />
    </>
  );
}

/** Lines of one dimension, below all numbers. */
function Lines({ placed }: { readonly placed: Placed }) {
  const { box, line, feet, dimension } = placed;
  const { above } = dimension.mark;
  if (line) {
    const beyond = line.y + (above ? -4 : 4);
    return (
      <>
        {feet.map(({ x, y }, end) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the two ends of a line have no identity but their order
          <line key={end} className="dim-foot" x1={x} x2={x} y1={y} y2={beyond} />
        ))}
        <Line {...line} text={{ x: box.x, end: box.x + box.width }} />
      </>
    );
  }
  const [foot] = feet;
  const x = Math.max(box.x + 3, Math.min(box.x + box.width - 3, foot.x));
  const edge = above ? box.y + box.height : box.y;
  return <path className="dim-leader" d={`M${foot.x} ${foot.y}L${x} ${edge}`} />;
}

function begin({ dimension }: Placed): void {
  showField(dimension);
  if (mayChange()) setDrawing({ typing: dimension.id, notice: null });
}

function Figure({ placed }: { readonly placed: Placed }) {
  const { box, text, dimension } = placed;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button of HTML cannot stand in a drawing
    <g
      role="button"
      tabIndex={-1}
      className="dim-text"
      data-dimension={dimension.id}
      aria-label={drawingText.figure(stepName(dimension), text)}
      onPointerDown={(event) => event.stopPropagation()}
      onClick={() => begin(placed)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') begin(placed);
      }}
    >
      <title>{stepName(dimension)}</title>
      <rect x={box.x} y={box.y} width={box.width} height={box.height} rx={3} />
      <text x={box.x + box.width / 2} y={box.y + box.height - 4}>
        {text}
      </text>
    </g>
  );
}

/** All dimensions that found room. */
export function DimensionMarks({ placed }: { readonly placed: readonly Placed[] }) {
  const shown = useView((state) => state.helpFor?.key);
  const pulled = useDrawing((state) => state.pull?.dimension.id);
  const look = ({ dimension }: Placed) => {
    if (dimension.id === pulled) return `dim pulled ${dimension.group}`;
    return pathKey(dimension.path) === shown ? `dim shown ${dimension.group}` : `dim ${dimension.group}`;
  };
  return (
    <>
      {placed.map((one) => (
        <g key={one.dimension.id} className={look(one)}>
          <Lines placed={one} />
        </g>
      ))}
      {placed.map((one) => (
        <g key={one.dimension.id} className={look(one)}>
          <Figure placed={one} />
        </g>
      ))}
    </>
  );
}
