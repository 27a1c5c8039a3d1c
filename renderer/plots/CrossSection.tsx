/** The channel cut across at the picked position: width against depth, coloured by age or speed, read by pointing. */

import { type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import { formatNumber, formatQuantity, type Prediction, type StationSection } from '../../core/index.ts';
import { TimeBar } from '../panels/MeltLegend.tsx';
import { gradientOf, speedColour, timeColour, timePlace } from '../scene/meltScale.ts';
import { useMelt } from '../store/melt.ts';
import { useView } from '../store/view.ts';
import { meltText } from '../strings/melt.ts';
import { readInk } from './Chart.tsx';
import { paintSection } from './paintSection.ts';
import { nearestNode, type SectionLayout, sectionLayout } from './sectionLayout.ts';

const words = meltText.across;

/** Nodes farther than this from the pointer are not read, px. */
const reach = 14;

function useWidth() {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [box, width] as const;
}

/** Places of the nodes on the colour scale. */
function placesOf(section: StationSection, across: 'age' | 'speed', mean: number): Float32Array {
  if (across === 'age') return section.age.map((age) => timePlace(age / mean));
  const top = Math.max(...section.speed) || 1;
  return section.speed.map((speed) => speed / top);
}

function Picture(props: {
  readonly section: StationSection;
  readonly layout: SectionLayout;
  readonly mean: number;
  onPoint(node: number | null): void;
}) {
  const { section, layout, mean, onPoint } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const across = useMelt((state) => state.across);
  const theme = useView((state) => state.theme);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme changes the colours that are read from the style
  useEffect(() => {
    const element = canvas.current;
    if (!element) return;
    const style = getComputedStyle(element);
    const ink = {
      chart: readInk(element),
      steel: style.getPropertyValue('--steel').trim(),
      line: style.getPropertyValue('--ink').trim(),
    };
    const colour = across === 'age' ? timeColour : speedColour;
    paintSection(element, section, layout, { places: placesOf(section, across, mean), colour, ink });
  }, [section, layout, mean, across, theme]);
  const point = (event: PointerEvent<HTMLCanvasElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const found = nearestNode(section, layout, event.clientX - box.left, event.clientY - box.top);
    onPoint(found.distance <= reach ? found.node : null);
  };
  const label = words.label(formatQuantity(section.z, 'mm', 4));
  return (
    <canvas
      ref={canvas}
      className="across-picture"
      style={{ width: layout.width, height: layout.height }}
      role="img"
      aria-label={label}
      onPointerMove={point}
      onPointerLeave={() => onPoint(null)}
    />
  );
}

function SpeedBar({ section }: { readonly section: StationSection }) {
  const top = Math.max(...section.speed);
  return (
    <div className="ramp">
      <div className="ramp-bar" style={{ background: gradientOf(speedColour) }} />
      {[0, 0.5, 1].map((share) => (
        <div key={share} className="ramp-mark" style={{ left: `${100 * share}%` }}>
          <span className="ramp-multiple">{formatQuantity(share * top, 'mm/s', 2)}</span>
        </div>
      ))}
    </div>
  );
}

function Reading({ section, node, mean }: { section: StationSection; node: number | null; mean: number }) {
  if (node === null) return <p className="across-reading quiet">{words.point}</p>;
  const age = section.age[node] ?? 0;
  return (
    <p className="across-reading">
      {formatQuantity(section.depth[node] ?? 0, 'mm', 3)} {words.depth.split(',')[0]?.toLowerCase()}:{' '}
      <b>{formatQuantity(age, 's', 3)}</b> ({formatNumber(age / mean, 2)} {meltText.timesMean}),{' '}
      <b>{formatQuantity(section.speed[node] ?? 0, 'mm/s', 2)}</b>
    </p>
  );
}

/** Picture, legend, reading. */
export function CrossSection({ section, prediction }: { section: StationSection; prediction: Prediction }) {
  const [box, width] = useWidth();
  const [node, setNode] = useState<number | null>(null);
  const across = useMelt((state) => state.across);
  const layout = useMemo(() => (width > 0 ? sectionLayout(section, width) : null), [section, width]);
  const mean = prediction.fields?.meanTime ?? prediction.residence.mean;
  const oldest = Math.max(...section.age);
  return (
    <div
      className="across-box"
      ref={box}
      data-z={section.z.toFixed(5)}
      data-oldest={oldest.toPrecision(4)}
      data-fastest={Math.max(...section.speed).toPrecision(4)}
    >
      {layout && <Picture {...{ section, layout, mean, onPoint: setNode }} />}
      <Reading {...{ section, node, mean }} />
      {across === 'age' ? <TimeBar mean={mean} /> : <SpeedBar section={section} />}
    </div>
  );
}
