/** The two charts of colour with the accepted limit, and where it is crossed in words. */

import { useMemo, useState } from 'react';
import {
  type ColourSweep,
  formatNumber,
  formatQuantity,
  fromSi,
  type KeptStretch,
  type SweepPoint,
  type Unit,
} from '../../core/index.ts';
import { Chart, curveHeight } from '../plots/Chart.tsx';
import type { SweepsAnswer } from '../solve/colourJob.ts';
import { colourText } from '../strings/colour.ts';
import { type Place, sweepData, sweepOptions } from './sweepPlot.ts';

const words = colourText;

/** A stretch in words. */
export function keptText(kept: KeptStretch | null, unit: Unit): string {
  const place = (value: number) => formatQuantity(value, unit, 3);
  if (kept === null) return words.kept.nowhere;
  if (kept.from === null) return kept.to === null ? words.kept.all : words.kept.to(place(kept.to));
  return kept.to === null ? words.kept.from(place(kept.from)) : words.kept.between(place(kept.from), place(kept.to));
}

/** Colours along the abscissa, so that the chart is seen as well as read. */
function Strip({ points }: { readonly points: readonly SweepPoint[] }) {
  const [first, last] = [points[0], points[points.length - 1]];
  const span = first && last ? last.at - first.at : 0;
  if (!first || !(span > 0)) return null;
  const stops = points.map(({ at, srgb }) => `${srgb} ${(100 * (at - first.at)) / span}%`);
  return <div className="colour-strip" aria-hidden="true" style={{ background: `linear-gradient(90deg, ${stops})` }} />;
}

function SweepFigure(props: {
  readonly sweep: ColourSweep;
  readonly unit: Unit;
  readonly texts: typeof words.speed | typeof words.temperature;
  readonly places: readonly Place[];
  readonly done: boolean;
}) {
  const { sweep, unit, texts, places, done } = props;
  const options = useMemo(() => sweepOptions(`${texts.axis}, ${unit}`, unit, places), [texts, unit, places]);
  const data = useMemo(() => sweepData(sweep, unit), [sweep, unit]);
  return (
    <div className="sweep">
      <h3>{texts.title}</h3>
      {sweep.reason ? (
        <p className="missing-colour">▲ {sweep.reason}</p>
      ) : (
        <>
          <Chart label={texts.title} data={data} options={options} height={curveHeight} />
          <Strip points={sweep.points} />
          {done ? (
            <p>
              {texts.kept} (ΔE00 ≤ {formatNumber(sweep.acceptable, 2)}): <b>{keptText(sweep.keptMean, unit)}</b>.{' '}
              {texts.keptWorst}: <b>{keptText(sweep.keptWorst, unit)}</b>.
            </p>
          ) : (
            <p className="quiet">{words.keptLater}</p>
          )}
        </>
      )}
    </div>
  );
}

function SpeedNotes({ sweeps }: { readonly sweeps: SweepsAnswer }) {
  const { paused, setFeeds, most } = sweeps;
  const speed = (value: number) => formatQuantity(value, 'mm/s', 3);
  return (
    <p className="quiet">
      {setFeeds !== null && `${words.speed.setFeeds(speed(setFeeds))} `}
      {most !== null && `${words.speed.most(speed(most))} `}
      {paused &&
        words.speed.paused(speed(paused.speed), formatNumber(paused.dE00Mean, 2), formatNumber(paused.dE00Worst, 2))}
    </p>
  );
}

function Grounds({ sweeps }: { readonly sweeps: SweepsAnswer }) {
  const [open, setOpen] = useState(false);
  const grounds = [...new Set([...sweeps.speed.assumptions, ...sweeps.temperature.assumptions])];
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>? {words.assumptions}</summary>
      <ul className="grounds">
        {grounds.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {sweeps.gaps.map(({ asked, of, reason }) => (
          <li key={`${of}-${asked}`}>
            {words.gaps}: {formatQuantity(asked, of === 'speed' ? 'mm/s' : '°C', 3)}, {reason}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** What the charts show. */
interface SweepsProps {
  readonly sweeps: SweepsAnswer;
  /** print speed that is set, m/s */
  readonly setSpeed: number;
  /** all places are worked out: before that, a limit read between a few of them would be wrong */
  readonly done: boolean;
}

/** Both charts. */
export function Sweeps({ sweeps, setSpeed, done }: SweepsProps) {
  const { setFeeds, temperature } = sweeps;
  const setTemperature = temperature.points.length > 0 ? sweeps.setTemperature : null;
  const speedPlaces = useMemo(
    () => [
      { at: fromSi(setSpeed, 'mm/s'), label: words.speed.set },
      ...(setFeeds === null ? [] : [{ at: fromSi(setFeeds, 'mm/s'), label: words.speed.feeds }]),
    ],
    [setSpeed, setFeeds],
  );
  const heatPlaces = useMemo(
    () => (setTemperature === null ? [] : [{ at: fromSi(setTemperature, '°C'), label: words.temperature.set }]),
    [setTemperature],
  );
  return (
    <section aria-label={`${words.speed.title}, ${words.temperature.title}`}>
      <div className="colour-pair">
        <SweepFigure sweep={sweeps.speed} unit="mm/s" texts={words.speed} places={speedPlaces} done={done} />
        <SweepFigure sweep={temperature} unit="°C" texts={words.temperature} places={heatPlaces} done={done} />
      </div>
      <SpeedNotes sweeps={sweeps} />
      <Grounds sweeps={sweeps} />
    </section>
  );
}
