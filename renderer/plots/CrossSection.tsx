/** The channel cut across at the picked position: width against depth, coloured by age or speed, read by pointing. */

import { type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import type { Prediction, StationSection } from '../../core/index.ts';
import { formatNumber, formatQuantity, useLook } from '../look.ts';
import { TimeBar } from '../panels/MeltLegend.tsx';
import { gradientOf, speedColour, timeColour, timePlace } from '../scene/meltScale.ts';
import { useRootLook } from '../store/look.ts';
import { useMelt } from '../store/melt.ts';
import { useView } from '../store/view.ts';
import { meltText } from '../strings/melt.ts';
import { readInk } from './Chart.tsx';
import { paintSection } from './paintSection.ts';
import { pixelOf, pressed, useSectionView, useWheel, ZoomButtons } from './SectionHand.tsx';
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

interface PictureProps {
  readonly section: StationSection;
  readonly layout: SectionLayout;
  readonly mean: number;
  readonly node: number | null;
  onPoint(node: number | null): void;
}

/** The picture is painted anew for whatever it shows. */
function usePainting(props: PictureProps, shown: SectionLayout) {
  const { section, layout, mean, node } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const across = useMelt((state) => state.across);
  const theme = useView((state) => state.theme);
  const root = useRootLook();
  const numbers = useLook();
  // biome-ignore lint/correctness/useExhaustiveDependencies: theme and root change the colours that are read from the style
  useEffect(() => {
    const element = canvas.current;
    if (!element) return;
    const style = getComputedStyle(element);
    const colourOf = (name: string) => style.getPropertyValue(name).trim();
    const ink = {
      chart: readInk(element),
      steel: colourOf('--steel'),
      line: colourOf('--ink'),
      page: colourOf('--pane'),
    };
    const colour = across === 'age' ? timeColour : speedColour;
    paintSection(element, section, layout, shown, {
      places: placesOf(section, across, mean),
      colour,
      ink,
      node,
      numbers,
    });
  }, [section, layout, shown, mean, across, theme, root, node, numbers]);
  return canvas;
}

function Picture(props: PictureProps) {
  const { section, layout, onPoint } = props;
  const hand = useSectionView(section, layout);
  const canvas = usePainting(props, hand.shown);
  useWheel(canvas, hand);
  const point = (event: PointerEvent<HTMLCanvasElement>) => {
    if (event.buttons === 1 && hand.view.zoom > 1) {
      hand.move(event.movementX, event.movementY);
      return;
    }
    const [px, py] = pixelOf(event);
    const found = nearestNode(section, hand.shown, px, py);
    onPoint(found.distance <= reach * Math.max(1, hand.view.zoom / 3) ? found.node : null);
  };
  return (
    <div className="across-frame">
      <canvas
        ref={canvas}
        className="across-picture"
        style={{ width: layout.width, height: layout.height }}
        role="img"
        tabIndex={0}
        aria-label={`${words.label(formatQuantity(section.z, 'mm', 4))}. ${words.keys}`}
        data-zoom={hand.view.zoom.toFixed(2)}
        onPointerMove={point}
        onPointerLeave={() => onPoint(null)}
        onKeyDown={(event) => pressed(event, props, hand)}
      />
      <ZoomButtons hand={hand} />
    </div>
  );
}

function SpeedBar({ section }: { readonly section: StationSection }) {
  const top = Math.max(...section.speed);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a legend is no set of fields
    <div className="ramp" role="group" aria-label={words.speedLegend}>
      <div className="ramp-bar" aria-hidden="true" style={{ background: gradientOf(speedColour) }} />
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
    <p className="across-reading" aria-live="polite">
      {formatQuantity(section.depth[node] ?? 0, 'mm', 3)} {words.depth.toLowerCase()}:{' '}
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
      {layout && <Picture {...{ section, layout, mean, node, onPoint: setNode }} />}
      <Reading {...{ section, node, mean }} />
      {across === 'age' ? <TimeBar mean={mean} /> : <SpeedBar section={section} />}
    </div>
  );
}
