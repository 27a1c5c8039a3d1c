/** Heads laid over each other, to be looked at as closely as wanted. */

import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import {
  type Alignment,
  alignmentShift,
  headProfile,
  type Project,
  radiusAt,
  validateDesign,
} from '../../core/index.ts';
import { formatNumber, formatQuantity, useLook } from '../look.ts';
import { useBox } from '../plots/useBox.ts';
import { useProject } from '../store/project.ts';
import { compareText } from '../strings/compare.ts';
import type { PartProps } from './Compare.tsx';
import { Tools } from './DrawingTools.tsx';
import { type DrawingScale, drawingScale, moved, type Sight, zoomed } from './drawingScale.ts';
import { type DrawnHead, HeadDrawing } from './HeadDrawing.tsx';
import { LineLegend, LineSample } from './marks.tsx';
import type { Compared } from './runs.ts';
import { useCompare } from './store.ts';

const words = compareText.drawings;

/** The heads that can be drawn, the base first among equals of place; null without any. */
function headsOf(project: Project, compared: readonly Compared[], baseId: string | null, alignment: Alignment) {
  const drawn = compared.flatMap(({ id, found }, place) => {
    const design = validateDesign(project, id);
    return design.ok ? [{ id, place, profile: headProfile(design.value), flights: found.shape?.flights ?? [] }] : [];
  });
  const first = drawn.find(({ id }) => id === baseId) ?? drawn[0];
  if (!first) return null;
  const heads = drawn.map(
    (head): DrawnHead => ({ ...head, shift: alignmentShift(first.profile, head.profile, alignment) }),
  );
  return { heads, base: heads.find(({ id }) => id === first.id) ?? heads[0] };
}

/** All that can be seen, m, with a little room. */
function wholeOf(heads: readonly DrawnHead[]): Sight {
  const from = Math.min(...heads.map(({ profile, shift }) => (profile.screw.z[0] ?? 0) + shift));
  const to = Math.max(...heads.map(({ profile, shift }) => profile.end + shift));
  return { from: from - 0.01 * (to - from), to: to + 0.01 * (to - from) };
}

/** Diameters of every head where the pointer is. */
function Readout({ heads, at }: { readonly heads: readonly DrawnHead[]; readonly at: number | null }) {
  useLook();
  const diameter = (r: number) => (r > 0 ? formatQuantity(2 * r, 'mm', 4) : '–');
  if (at === null) return <p className="quiet head-readout">{words.point}</p>;
  return (
    <dl className="head-readout">
      <div>
        <dt>{words.read(formatQuantity(at, 'mm', 4))}</dt>
      </div>
      {heads.map(({ id, place, profile, shift }) => (
        <div key={id}>
          <dt>
            <LineSample place={place} /> <b>{id}</b>
          </dt>
          <dd>
            {words.root} {diameter(radiusAt(profile.screw, at - shift))}, {words.bore}{' '}
            {diameter(radiusAt(profile.bore, at - shift))}, {words.outside}{' '}
            {diameter(radiusAt(profile.outside, at - shift))}
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface Hand {
  readonly sight: Sight;
  readonly whole: Sight;
  readonly scale: DrawingScale;
  look(sight: Sight): void;
  point(at: number | null): void;
}

/** Zooms by the wheel about the pointer; listened to directly, because the page must not scroll meanwhile. */
function useWheel(hand: Hand, box: React.RefObject<HTMLDivElement | null>): void {
  const latest = useRef(hand);
  latest.current = hand;
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const { sight, scale, whole, look } = latest.current;
      const z = scale.z(event.clientX - element.getBoundingClientRect().left);
      look(zoomed(sight, event.deltaY < 0 ? 1.2 : 1 / 1.2, z, whole));
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, [box]);
}

/** Drag and keys over the drawing. */
function useHand(hand: Hand, at: number | null) {
  const dragged = useRef<number | null>(null);
  const zOf = (event: PointerEvent) => hand.scale.z(event.clientX - event.currentTarget.getBoundingClientRect().left);
  return {
    onPointerDown: (event: PointerEvent) => {
      dragged.current = zOf(event);
      event.currentTarget.setPointerCapture?.(event.pointerId);
    },
    onPointerUp: () => {
      dragged.current = null;
    },
    onPointerMove: (event: PointerEvent) => {
      const z = zOf(event);
      hand.point(z);
      if (dragged.current !== null) hand.look(moved(hand.sight, dragged.current - z, hand.whole));
    },
    onPointerLeave: () => hand.point(null),
    onKeyDown: (event: KeyboardEvent) => {
      const step = (hand.sight.to - hand.sight.from) / 60;
      const from = at ?? (hand.sight.from + hand.sight.to) / 2;
      if (event.key === 'ArrowLeft') hand.point(Math.max(hand.sight.from, from - step));
      else if (event.key === 'ArrowRight') hand.point(Math.min(hand.sight.to, from + step));
      else if (event.key === '+') hand.look(zoomed(hand.sight, 1.4, from, hand.whole));
      else if (event.key === '-') hand.look(zoomed(hand.sight, 1 / 1.4, from, hand.whole));
      else return;
      event.preventDefault();
    },
  };
}

/** What the drawing does with proportions, and what its hatches mean. */
function Note({
  scale,
  base,
  count,
}: {
  readonly scale: DrawingScale;
  readonly base: DrawnHead;
  readonly count: number;
}) {
  const proportions = scale.stretch > 1.02 ? words.stretched(formatNumber(scale.stretch, 2)) : words.trueNow;
  return (
    <p className="quiet">
      {proportions} {count > 1 && words.hatch(base.id)} {words.flights}
    </p>
  );
}

interface HeadsProps {
  readonly heads: readonly DrawnHead[];
  readonly base: DrawnHead;
  readonly names: PartProps['revisions'];
}

function Heads({ heads, base, names }: HeadsProps) {
  const whole = useMemo(() => wholeOf(heads), [heads]);
  const [chosen, look] = useState<Sight | null>(null);
  const [isTrue, setTrue] = useState(false);
  const [at, point] = useState<number | null>(null);
  const [box, { width, height }] = useBox();
  const sight = chosen ?? whole;
  const most = Math.max(...heads.flatMap(({ profile }) => [...profile.outside.r]));
  const scale = useMemo(
    () => drawingScale(sight, { width, height }, most, isTrue),
    [sight, width, height, most, isTrue],
  );
  const held = { sight, whole, scale, look, point };
  useWheel(held, box);
  const hand = useHand(held, at);
  const label = words.label(heads.map(({ id }) => id).join(', '));
  return (
    <>
      <Tools {...{ base, whole, sight, isTrue, look, setTrue }} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys read diameters here */}
      <section className="heads-box" ref={box} tabIndex={0} aria-label={label} {...hand}>
        {width > 0 && (
          <svg width={width} height={height} role="img" aria-label={label}>
            <HeadDrawing {...{ heads, base, sight, scale, width, height }} />
            {at !== null && <line className="head-pointer" x1={scale.x(at)} x2={scale.x(at)} y1={0} y2={scale.y(0)} />}
          </svg>
        )}
      </section>
      <Readout {...{ heads, at }} />
      <LineLegend revisions={names} />
      <Note {...{ scale, base, count: heads.length }} />
    </>
  );
}

/** The part of the dialog. */
export function Drawings({ revisions, compared, base }: PartProps) {
  const project = useProject();
  const alignment = useCompare((state) => state.alignment);
  const drawn = useMemo(() => headsOf(project, compared, base, alignment), [project, compared, base, alignment]);
  if (!drawn?.base) return <p className="quiet">{words.missing}</p>;
  return (
    <section aria-label={words.title} className="compare-drawings">
      <Heads heads={drawn.heads} base={drawn.base} names={revisions} />
    </section>
  );
}
