/** What a maker's step on each varied input does to the chosen candidate. */

import { Button } from 'react-aria-components';
import { type Candidate, figureOf, type SensitivityRow } from '../../core/index.ts';
import { searchText } from '../strings/search.ts';
import { startSensitivity } from './acts.ts';
import { inSentence, shownChange, shownValue } from './shown.ts';
import { type SeekRun, sameChanges, useSearch } from './store.ts';

const words = searchText.detail;

/** A step one way: the objective's change, and what breaks. */
function Side({ side }: { readonly side: SensitivityRow['sides'][number] | undefined }) {
  if (!side) return <td>–</td>;
  if (side.hole !== null) return <td className="reason-cell">✕ {side.hole}</td>;
  return (
    <td>
      {shownChange(side.change)}
      <br />
      <small className={side.breaks.length > 0 ? 'issue' : 'quiet'}>
        {side.breaks.length > 0 ? words.breaks(side.breaks.map(inSentence).join(', ')) : words.holds}
      </small>
    </td>
  );
}

function Rows({ rows, objective }: { readonly rows: readonly SensitivityRow[]; readonly objective: string }) {
  return (
    <table className="doubt-table">
      <thead>
        <tr>
          <th scope="col">{figureOf(objective).label}</th>
          <th scope="col">{searchText.step}</th>
          <th scope="col">{words.down}</th>
          <th scope="col">{words.up}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ input, label, unit, step, sides }) => (
          <tr key={input}>
            <th scope="row">{label}</th>
            <td>{shownValue(step, unit === '°C' ? 'K' : unit)}</td>
            <Side side={sides[0]} />
            <Side side={sides[1]} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The section; it is worked out when asked for. */
export function Sensitivity({ run, candidate }: { readonly run: SeekRun; readonly candidate: Candidate }) {
  const last = useSearch((state) => state.sensitivity);
  const found = last && sameChanges(last.of, candidate.design.changes) ? last : null;
  const busy = found?.state === 'running' || run.state === 'running';
  return (
    <section>
      <h3>{words.exact}</h3>
      <p className="quiet">{words.exactHelp}</p>
      {found?.state === 'fault' && <p className="issue" role="alert">{`${searchText.run.fault} ${found.fault}`}</p>}
      {found?.state === 'done' ? (
        <Rows rows={found.rows} objective={run.spec.objective.figure} />
      ) : (
        <Button
          className="tool"
          isDisabled={busy}
          onPress={() => void startSensitivity(run, run.spec, candidate.design)}
        >
          {found?.state === 'running' ? words.exactBusy : words.exactRun}
        </Button>
      )}
    </section>
  );
}
