/** The study's answer: what to measure next, quantiles, bands, influences, failures. */

import { type DoubtSummary, formatNumber, formatQuantity, type OutputDoubt } from '../../core/index.ts';
import { doubtText } from '../strings/doubt.ts';
import { Bands } from './Bands.tsx';
import { Ranking } from './Ranking.tsx';

const words = doubtText;

/** A figure as shown: NaN is no number. */
function shown(value: number, unit: OutputDoubt['unit']): string {
  if (!Number.isFinite(value)) return '–';
  return unit === '' ? formatNumber(value, 3) : formatQuantity(value, unit, 3);
}

/** The band from 5 to 95 % on a scale from nothing to the largest, with median and stated value. */
function BandBar({ output }: { readonly output: OutputDoubt }) {
  const { q05, q50, q95, nominal } = output;
  const most = Math.max(q95, nominal) * 1.05;
  if (!(most > 0) || !Number.isFinite(most)) return null;
  const place = (value: number) => `${Math.max(0, Math.min(100, (100 * value) / most))}`;
  return (
    <svg className="band-bar" viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
      <rect className="band-rail" x="0" y="5" width="100" height="2" />
      <rect
        className="band-fill"
        x={place(q05)}
        y="2"
        width={Math.max(0.5, Number(place(q95)) - Number(place(q05)))}
        height="8"
      />
      <rect className="band-median" x={place(q50)} y="1" width="0.8" height="10" />
      {Number.isFinite(nominal) && <rect className="band-nominal" x={place(nominal)} y="0" width="0.8" height="12" />}
    </svg>
  );
}

function Quantiles({ summary }: { readonly summary: DoubtSummary }) {
  const head = words.outputs;
  const good = summary.done - summary.failed;
  return (
    <table className="doubt-table">
      <thead>
        <tr>
          {[head.output, head.nominal, head.q05, head.q50, head.q95].map((label) => (
            <th key={label} scope="col">
              {label}
            </th>
          ))}
          <th scope="col" className="band-head">
            {head.band}
          </th>
        </tr>
      </thead>
      <tbody>
        {summary.outputs.map((output) => (
          <tr key={output.id}>
            <th scope="row">
              {output.label}
              {output.known < good && <small> {head.known(output.known, summary.done)}</small>}
            </th>
            <td>{shown(output.nominal, output.unit)}</td>
            <td>{shown(output.q05, output.unit)}</td>
            <td>{shown(output.q50, output.unit)}</td>
            <td>{shown(output.q95, output.unit)}</td>
            <td>
              <BandBar output={output} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Next({ summary }: { readonly summary: DoubtSummary }) {
  const [most, ...others] = summary.measureNext;
  if (!most) return <p>{words.next.none}</p>;
  return (
    <>
      <p className="measure-next">
        <b>{words.next.first(most.label, formatQuantity(most.share, '%', 2))}</b> {most.how}
      </p>
      <ol className="measure-others">
        {others.map(({ path, label, share, how }) => (
          <li key={path}>
            {label}, {formatQuantity(share, '%', 2)}. <span className="quiet">{how}</span>
          </li>
        ))}
      </ol>
    </>
  );
}

function Failures({ summary }: { readonly summary: DoubtSummary }) {
  if (summary.failed === 0) return null;
  return (
    <details open>
      <summary>▲ {words.failures(summary.failed, summary.done)}</summary>
      <ul className="grounds">
        {summary.failures.map(({ reason, count }) => (
          <li key={reason}>
            {count} × {reason}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** All of it. */
export function Answer({ summary }: { readonly summary: DoubtSummary }) {
  return (
    <>
      <section aria-label={words.next.title}>
        <h2>{words.next.title}</h2>
        <Next summary={summary} />
        <Failures summary={summary} />
      </section>
      <section aria-label={words.outputs.title}>
        <h2>{words.outputs.title}</h2>
        <Quantiles summary={summary} />
        {summary.done < 60 && <p className="quiet">{words.outputs.few}</p>}
      </section>
      <div className="colour-pair">
        <Bands curve={summary.curve} />
        <Ranking summary={summary} />
      </div>
      <details>
        <summary>? {words.method}</summary>
        <p className="basis">{summary.note}</p>
      </details>
    </>
  );
}
