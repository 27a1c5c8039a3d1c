/** Cards in the corner of the 3D view: what belongs to the tools that are on. */

import { type RefObject, useEffect, useRef, useState } from 'react';
import { heldTogether } from '../../core/index.ts';
import { formatQuantity, useLook } from '../look.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { setView, useView } from '../store/view.ts';
import { sceneText } from '../strings/scene.ts';
import { useFrontMarks } from './frontMarks.ts';
import { MeasureCard } from './MeasureCard.tsx';
import { useMeltShown } from './openPlanes.ts';
import { type SliceKind, setScene, useScene } from './sceneStore.ts';
import { sliceAt } from './sliceAt.ts';
import { usePlacedGrains } from './useGrains.ts';

const kinds = Object.entries(sceneText.slice.kinds) as [SliceKind, string][];

/** Which plane the slice takes, and where it stands. */
function SliceCard() {
  useLook();
  const section = useView((state) => state.section);
  const kind = useScene((state) => state.slice);
  const bounds = useEvaluation((state) => state.shape?.bounds ?? null);
  const painted = useMeltShown();
  if (section === null || painted || !bounds) return null;
  const at = formatQuantity(sliceAt(kind, section, bounds), 'mm', 3);
  return (
    <div className="scene-card">
      <div className="row">
        <select
          aria-label={sceneText.slice.kind}
          value={kind}
          onChange={(event) => setScene({ slice: event.target.value as SliceKind })}
        >
          {kinds.map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
        <input
          type="range"
          aria-label={sceneText.slice.at[kind]}
          aria-valuetext={at}
          min={-1}
          max={1}
          step={0.02}
          value={section}
          onChange={(event) => setView({ section: Number(event.target.value) })}
        />
        <output>{at}</output>
      </div>
    </div>
  );
}

/** How much a clear barrel shows. */
function ClearCard() {
  const clear = useView((state) => state.barrel === 'clear');
  const opacity = useScene((state) => state.opacity);
  if (!clear) return null;
  return (
    <label className="scene-card">
      <span className="row">
        {sceneText.clear.opacity}
        <input
          type="range"
          min={0.05}
          max={0.9}
          step={0.05}
          value={opacity}
          aria-valuetext={`${Math.round(100 * opacity)} %`}
          onChange={(event) => setScene({ opacity: Number(event.target.value) })}
        />
        <output>{Math.round(100 * opacity)} %</output>
      </span>
    </label>
  );
}

/** Findings about granules that do not pass. */
const misfitCodes = ['grain-fit', 'grain-blocked', 'shallow-before-melt', 'long-granules', 'tight-before-melt'];

function MisfitWords() {
  const prediction = useEvaluation((state) => state.prediction);
  const finding = prediction?.findings.find(({ code }) => misfitCodes.includes(code));
  if (!finding) return null;
  return (
    <p className={finding.severity === 'stop' ? 'stop' : undefined} data-finding={finding.code}>
      {finding.saw}
    </p>
  );
}

/** A view lower than this has no room for a card of many lines, px. */
const roomyFrom = 340;

/** Whether the view that an element lies in is low. */
function useLowView(): [RefObject<HTMLDivElement | null>, boolean] {
  const corner = useRef<HTMLDivElement>(null);
  const [low, setLow] = useState(false);
  useEffect(() => {
    const view = corner.current?.parentElement;
    if (!view) return;
    const observer = new ResizeObserver(() => setLow(view.clientHeight < roomyFrom));
    observer.observe(view);
    return () => observer.disconnect();
  }, []);
  return [corner, low];
}

/** What is drawn of the granules; folded to one line where the view is low. */
function GrainsCard({ low }: { readonly low: boolean }) {
  useLook();
  const wanted = useScene((state) => state.grains);
  const turning = useView((state) => state.turning);
  const { picture, state, fault } = usePlacedGrains();
  const words = sceneText.grains;
  if (!wanted) return null;
  if (turning) return <p className="scene-card">{words.turning}</p>;
  if (fault) return <p className="scene-card">{`${words.fault} ${fault}`}</p>;
  if (!picture) return <output className="scene-card">{words.waiting}</output>;
  if (picture.tooFine) return <p className="scene-card">{words.tooFine}</p>;
  const { count, tooLargeCount, passage, slab } = picture;
  const mm = (metres: number) => formatQuantity(metres, 'mm', 3);
  return (
    <details
      key={String(low)}
      className="scene-card grains-card"
      open={!low}
      data-count={count}
      data-misfits={tooLargeCount}
      data-state={state}
    >
      <summary>{words.caption}</summary>
      <p>
        <span className={tooLargeCount > 0 ? 'key-dot bad' : 'key-dot'} />
        {[words.count(count), slab === null ? '' : words.slab(mm(2 * slab))].filter(Boolean).join(', ')}.{' '}
        {tooLargeCount > 0 ? words.some(tooLargeCount, count) : words.none}{' '}
        {heldTogether(words.passage(passage.name.toLowerCase(), mm(passage.size)))}.
      </p>
      <MisfitWords />
    </details>
  );
}

/** Where it softens and melts, in words; labels over the view may be hard to reach. */
function FrontCard() {
  const shown = useScene((state) => state.front);
  const known = useEvaluation((state) => state.prediction !== null);
  const marks = useFrontMarks();
  if (!shown || marks.length > 0) return null;
  return <p className="scene-card">{known ? sceneText.front.none : sceneText.front.waiting}</p>;
}

/** The places of melting for those who do not see the labels. */
function FrontList() {
  useLook();
  const marks = useFrontMarks();
  if (marks.length === 0) return null;
  return (
    <ul className="unseen">
      {marks.map(({ name, z }) => (
        <li key={name}>{`${name} ${formatQuantity(z, 'mm', 3)}`}</li>
      ))}
    </ul>
  );
}

/** All cards. */
export function SceneCards() {
  const [corner, low] = useLowView();
  return (
    <div className="scene-corner" ref={corner}>
      <GrainsCard low={low} />
      <FrontCard />
      <FrontList />
      <ClearCard />
      <SliceCard />
      <MeasureCard />
    </div>
  );
}
