/** What the trials weighed against what is predicted for them. */

import { useEffect } from 'react';
import { type BenchRow, formatNumber, fromSi } from '../../core/index.ts';
import { useProject } from '../store/project.ts';
import { benchText } from '../strings/bench.ts';
import { HeadRow } from './HeadRow.tsx';
import { Mark, MarkLegend, rowKind } from './marks.tsx';
import { RatioPlot } from './RatioPlot.tsx';
import { ResidualPlot } from './ResidualPlot.tsx';
import { RunBar } from './RunBar.tsx';
import { isOld, predictRows, runStore, useRuns } from './runs.ts';
import { setBench } from './store.ts';

const words = benchText.measured;

/** Logs up to this long are predicted without being asked for. */
const unasked = 60;

const flow = (value: number | null): string => (value === null ? '–' : formatNumber(fromSi(value, 'g/min'), 3));

function Row({ row }: { readonly row: BenchRow }) {
  const kind = rowKind(row);
  return (
    <tr className={`bench-row ${kind}`}>
      <th scope="row">{row.trialId}</th>
      <td className="num">{formatNumber(fromSi(row.screwSpeed, 'rpm'), 3)}</td>
      <td className="num">{flow(row.measured)}</td>
      <td className="num">{flow(row.predicted)}</td>
      <td className="num">{flow(row.residual)}</td>
      <td className="num">{row.ratio === null ? '–' : formatNumber(row.ratio, 3)}</td>
      <td className="nowrap">
        <svg viewBox="-8 -8 16 16" width="14" height="14" aria-hidden="true">
          <Mark kind={kind} x={0} y={0} />
        </svg>{' '}
        {words.kinds[kind]}
      </td>
      <td className="words">{row.reason ?? words.fine}</td>
    </tr>
  );
}

function Table({ rows }: { readonly rows: readonly BenchRow[] }) {
  const heads = [
    benchText.trials.id,
    `${benchText.fields.screwSpeedRpm.label}, rpm`,
    words.measuredAxis,
    words.predicted,
    `${words.difference}, g/min`,
    words.ratio,
    words.standing,
    words.remark,
  ];
  return (
    <div className="bench-scroll">
      <table className="bench-table" data-testid="measured" aria-label={words.table}>
        <HeadRow heads={heads} />
        <tbody>
          {rows.map((row) => (
            <Row key={row.trialId} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Plots and table; the predictions are made when it is looked at. */
export function MeasuredTab() {
  const project = useProject();
  const found = useRuns(({ rows }) => rows);
  const count = project.benchLog.length;
  useEffect(() => {
    const { rows, states } = runStore.getState();
    const wanted = rows === null || isOld(rows.from, project);
    if (wanted && !states.rows.running && count > 0 && count <= unasked) predictRows();
  }, [project, count]);
  if (count === 0) {
    return (
      <div className="bench-empty">
        <p>{words.none}</p>
        <button type="button" className="link" onClick={() => setBench({ tab: 'trials' })}>
          {benchText.tabs.trials}
        </button>
      </div>
    );
  }
  const old = found !== null && isOld(found.from, project);
  return (
    <>
      <div className="bench-tools">
        <RunBar
          kind="rows"
          label={found ? words.again : words.run}
          disabled={found !== null && !old}
          start={predictRows}
        />
        <span className="quiet">{words.calibrated}</span>
      </div>
      {old && <p className="bench-old">▲ {words.old}</p>}
      {found && (
        <div className={old ? 'stale' : ''}>
          <div className="bench-plots">
            <RatioPlot rows={found.rows} />
            <ResidualPlot rows={found.rows} />
          </div>
          <MarkLegend kinds={found.rows.map(rowKind)} />
          {count < 4 && <p className="quiet">{words.none4}</p>}
          <Table rows={found.rows} />
        </div>
      )}
    </>
  );
}
