/** The measured lengths, and choosing the places by numbers. */

import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { formatQuantity, useLook } from '../look.ts';
import type { Shape } from '../solve/protocol.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { activeRevision, useProjectState } from '../store/project.ts';
import { sceneText } from '../strings/scene.ts';
import { measured } from './measuring.ts';
import { worldOf } from './projection.ts';
import { setScene, toggleMeasuring, useScene } from './sceneStore.ts';
import { type ChosenSurface, radiusAt } from './surfaces.ts';

const words = sceneText.measure;
const surfaces = Object.entries(words.surfaces) as [ChosenSurface, string][];

interface Chosen {
  /** mm */
  readonly z: number;
  readonly surface: ChosenSurface;
}

function PlaceRow(props: {
  readonly label: string;
  readonly value: Chosen;
  readonly shape: Shape;
  onChange(value: Chosen): void;
}) {
  const { label, value, shape, onChange } = props;
  useLook();
  return (
    <fieldset className="row measure-row">
      <legend className="unseen">{label}</legend>
      <span aria-hidden="true">{label}</span>
      <input
        type="range"
        aria-label={`${label}: ${words.place}`}
        aria-valuetext={formatQuantity(value.z / 1000, 'mm', 4)}
        min={Math.ceil(1000 * shape.bounds.start)}
        max={Math.floor(1000 * shape.bounds.end)}
        step={0.5}
        value={value.z}
        onChange={(event) => onChange({ ...value, z: Number(event.target.value) })}
      />
      <output>{formatQuantity(value.z / 1000, 'mm', 4)}</output>
      <select
        aria-label={`${label}: ${words.surface}`}
        value={value.surface}
        onChange={(event) => onChange({ ...value, surface: event.target.value as ChosenSurface })}
      >
        {surfaces.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </fieldset>
  );
}

/** Two places by position and surface, in one half-plane. */
function ByNumbers({ shape }: { readonly shape: Shape }) {
  const outside = useProjectState((state) =>
    state.history ? activeRevision(state.history.present).barrel.outerDiameterMm / 2000 : shape.bounds.radius,
  );
  const [chosen, setChosen] = useState<readonly [Chosen, Chosen]>([
    { z: 0, surface: 'root' },
    { z: Math.round(1000 * shape.bounds.barrelEnd), surface: 'bore' },
  ]);
  const choose = (next: readonly [Chosen, Chosen]) => {
    setChosen(next);
    const points = next.map(({ z, surface }) => {
      const r = radiusAt(shape, outside, surface, z / 1000);
      return { at: worldOf(0, r, z / 1000), on: 'chosen' as const };
    });
    setScene({ points });
  };
  return (
    <details>
      <summary>{words.byNumbers}</summary>
      <PlaceRow label={words.from} value={chosen[0]} {...{ shape }} onChange={(from) => choose([from, chosen[1]])} />
      <PlaceRow label={words.to} value={chosen[1]} {...{ shape }} onChange={(to) => choose([chosen[0], to])} />
    </details>
  );
}

function Lengths() {
  useLook();
  const points = useScene((state) => state.points);
  const [from, to] = points;
  if (!from) return <p>{words.first}</p>;
  if (!to) return <p>{`${words.on[from.on]}. ${words.second}`}</p>;
  const { distance, axial, radial, around } = measured(from.at, to.at);
  const mm = (metres: number) => formatQuantity(metres, 'mm', 4);
  return (
    <>
      <output className="measured" data-distance={distance}>
        {words.distance} <b>{mm(distance)}</b>: {words.axial} <b>{mm(axial)}</b>, {words.radial} <b>{mm(radial)}</b>,{' '}
        {words.around} <b>{formatQuantity(around, '°', 3)}</b>
      </output>
      <p className="quiet">{`${words.from}: ${words.on[from.on]}; ${words.to}: ${words.on[to.on]}. ${words.again}`}</p>
    </>
  );
}

/** The card while measuring; Escape ends it from anywhere. */
export function MeasureCard() {
  const measuring = useScene((state) => state.measuring);
  const shape = useEvaluation((state) => state.shape);
  useEffect(() => {
    if (!measuring) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') setScene({ measuring: false, points: [] });
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [measuring]);
  if (!measuring || !shape) return null;
  return (
    <section className="scene-card measure-card" aria-label={words.title}>
      <Lengths />
      <ByNumbers shape={shape} />
      <Button className="link" onPress={toggleMeasuring}>
        {words.end}
      </Button>
    </section>
  );
}
