/** The first trials as they would stand in the log. */

import { type BenchImport, formatNumber } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';
import { HeadRow } from './HeadRow.tsx';

const words = benchText.import;
const names = benchText.fields;

/** Trials that are shown. */
const firstOnes = 8;

const shown = (value: number | undefined): string => (value === undefined ? '–' : formatNumber(value, 4));

/** The table; nothing where no line became a trial. */
export function ImportPreview({ read }: { readonly read: BenchImport }) {
  if (read.trials.length === 0) return null;
  const heads = [
    words.line,
    benchText.trials.id,
    names.date.label,
    names.revisionId.label,
    names.materialId.label,
    `${names.screwSpeedRpm.label}, rpm`,
    benchText.trials.temps,
    `${names.seconds.label}, s`,
    `${names.grams.label}, g`,
    `${names.torqueNm.label}, N·m`,
    'L* / a* / b*',
  ];
  const first = read.trials.slice(0, firstOnes);
  const part = read.trials.length > firstOnes ? ` (${words.first(firstOnes)})` : '';
  return (
    <div className="bench-scroll">
      <h3>{`${words.preview}${part}`}</h3>
      <table className="bench-table">
        <HeadRow heads={heads} />
        <tbody>
          {first.map(({ line, trial }) => (
            <tr key={trial.id}>
              <td className="num">{line}</td>
              <th scope="row">{trial.id}</th>
              <td className="nowrap">{trial.date}</td>
              <td>{trial.revisionId}</td>
              <td className="words">{trial.materialId}</td>
              <td className="num">{shown(trial.screwSpeedRpm)}</td>
              <td className="num">{trial.setTempsC.map((value) => formatNumber(value, 4)).join(' / ')}</td>
              <td className="num">{shown(trial.seconds)}</td>
              <td className="num">{shown(trial.grams)}</td>
              <td className="num">{shown(trial.torqueNm)}</td>
              <td className="num">{trial.lab ? trial.lab.map((value) => formatNumber(value, 3)).join(' / ') : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
