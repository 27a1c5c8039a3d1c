/** What lies over the canvas and follows the camera: the pointer's ring, names of melting places, misfits, the measured length. */

import { formatQuantity, useLook } from '../look.ts';
import { letterWidth, spreadLabels } from '../plots/meltMarks.ts';
import type { Shape } from '../solve/protocol.ts';
import { useView } from '../store/view.ts';
import { sceneText } from '../strings/scene.ts';
import { useFrontMarks } from './frontMarks.ts';
import { measured } from './measuring.ts';
import { type Pixel, type Projection, pixelOf, useProjection, worldOf } from './projection.ts';
import { useScene } from './sceneStore.ts';
import { useGrainsShown, usePlacedGrains } from './useGrains.ts';

const around = Array.from({ length: 41 }, (_, i) => (2 * Math.PI * i) / 40);

/** A ring about the axis as polyline text; m. */
const ringPoints = (view: Projection, z: number, radius: number): string =>
  around
    .map((angle) => pixelOf(view, worldOf(radius * Math.cos(angle), radius * Math.sin(angle), z)))
    .map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`)
    .join(' ');

/** The ring at the position that is pointed at in any view. */
function HoverRing({ shape, view }: { readonly shape: Shape; readonly view: Projection }) {
  const z = useView((state) => state.hoverZ);
  if (z === null) return null;
  return <polyline className="hover-ring" data-z={z} points={ringPoints(view, z, 1.1 * shape.bounds.radius)} />;
}

function Pin({ at, children, bad = false }: { readonly at: Pixel; readonly children: string; readonly bad?: boolean }) {
  return (
    <span
      className={bad ? 'scene-pin bad' : 'scene-pin'}
      style={{ transform: `translate(${at[0].toFixed(1)}px, ${at[1].toFixed(1)}px) translate(-50%, -100%)` }}
    >
      {children}
    </span>
  );
}

/** Names over the rings of melting, side by side where they would touch. */
function FrontNames({ shape, view }: { readonly shape: Shape; readonly view: Projection }) {
  const marks = useFrontMarks();
  if (marks.length === 0) return null;
  const texts = marks.map(({ z, name }) => `${name} ${formatQuantity(z, 'mm', 3)}`);
  const feet = marks.map(({ z }) => pixelOf(view, worldOf(0, 1.05 * shape.bounds.radius, z)));
  const labels = feet
    .map(([x], i) => ({ i, at: x, width: (texts[i]?.length ?? 0) * letterWidth + 14 }))
    .sort((a, b) => a.at - b.at);
  const lefts = spreadLabels(labels, 4, view.width - 4, 6);
  const top = Math.max(22, Math.min(...feet.map(([, y]) => y)) - 24);
  const heads = labels.map(({ i, width }, k) => ({ i, at: [(lefts[k] ?? 0) + width / 2, top] as Pixel }));
  return (
    <>
      <svg className="scene-lines" aria-hidden="true">
        {heads.map(({ i, at }) => (
          <line key={i} className="leader" x1={at[0]} y1={at[1]} x2={feet[i]?.[0]} y2={feet[i]?.[1]} />
        ))}
      </svg>
      <div className="scene-pins front-names">
        {heads.map(({ i, at }) => (
          <Pin key={i} at={at}>
            {texts[i] ?? ''}
          </Pin>
        ))}
      </div>
    </>
  );
}

/** How many granules do not fit, where they lie. */
function MisfitName({ view }: { readonly view: Projection }) {
  const shown = useGrainsShown();
  const { picture } = usePlacedGrains();
  if (!shown || !picture || picture.tooLargeCount === 0) return null;
  const { seat, z, height } = picture.mouth;
  const [x, y] = pixelOf(view, worldOf(0, seat + 1.5 * height, z));
  const at: Pixel = [Math.max(80, x), Math.max(26, y)];
  return (
    <div className="scene-pins">
      <Pin at={at} bad>
        {`⊘ ${sceneText.grains.pin(picture.tooLargeCount)}`}
      </Pin>
    </div>
  );
}

/** The measured places and the line between them. */
function MeasuredLine({ view }: { readonly view: Projection }) {
  const points = useScene((state) => state.points);
  if (points.length === 0) return null;
  const pixels = points.map(({ at }) => pixelOf(view, at));
  const [from, to] = pixels;
  const [a, b] = points;
  return (
    <>
      <svg className="scene-lines" aria-hidden="true">
        {from && to && <line className="measure-line" x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />}
        {pixels.map(([x, y], i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: first and second place
          <circle key={i} className={`measure-end ${points[i]?.on}`} cx={x} cy={y} r={4} />
        ))}
      </svg>
      {from && to && a && b && (
        <div className="scene-pins">
          <Pin at={[(from[0] + to[0]) / 2, (from[1] + to[1]) / 2 - 8]}>
            {formatQuantity(measured(a.at, b.at).distance, 'mm', 4)}
          </Pin>
        </div>
      )}
    </>
  );
}

/** All of it. */
export function Overlay({ shape }: { readonly shape: Shape }) {
  const view = useProjection();
  useLook();
  if (view.width === 0) return null;
  return (
    <>
      <svg className="scene-lines" aria-hidden="true">
        <HoverRing {...{ shape, view }} />
      </svg>
      <FrontNames {...{ shape, view }} />
      <MisfitName view={view} />
      <MeasuredLine view={view} />
    </>
  );
}
