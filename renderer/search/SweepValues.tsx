/** All values of a sweep as a table: what a chart shows, for those who read rather than look. */

import { capacityNames, figureOf } from '../../core/index.ts';
import { searchText } from '../strings/search.ts';
import { reasonOf, ticked } from './hatching.ts';
import { inputTitle, shownFigure, shownValue } from './shown.ts';
import { type SweepRun, useSearch } from './store.ts';

const words = searchText.result;

/** Most rows; a larger map is read on the map. */
const mostRows = 400;

/** The rows. */
function Rows({ run, figures }: { readonly run: SweepRun; readonly figures: readonly string[] }) {
  const limits = ticked(
    useSearch((state) => state.limits),
    useSearch((state) => state.hatchLimits),
  );
  return run.plan.candidates.slice(0, mostRows).map((changes, i) => {
    const design = run.designs[i];
    const limit = design?.limit;
    return (
      <tr key={changes.map(({ value }) => value).join(' ')}>
        {changes.map(({ input, value }) => (
          <td key={input}>{shownValue(value, run.inputs.find(({ id }) => id === input)?.unit ?? '')}</td>
        ))}
        {figures.map((id) => (
          <td key={id}>{shownFigure(design?.figures[id], figureOf(id).unit)}</td>
        ))}
        <td className="from-cell">{limit ? capacityNames[limit] : '–'}</td>
        <td className="reason-cell">{reasonOf(design, limits)}</td>
      </tr>
    );
  });
}

/** The table, closed to begin with. */
export function SweepValues({ run }: { readonly run: SweepRun }) {
  const [first, second] = useSearch((state) => state.shown);
  const figures = second === null || second === first ? [first] : [first, second];
  const inputs = run.plan.axes.map((axis) => run.inputs.find(({ id }) => id === axis.input));
  return (
    <details className="search-values">
      <summary>{words.table}</summary>
      <table className="doubt-table">
        <thead>
          <tr>
            {inputs.map((input) => (
              <th key={input?.id} scope="col">
                {input ? inputTitle(input) : ''}
              </th>
            ))}
            {figures.map((id) => (
              <th key={id} scope="col">
                {figureOf(id).label}
              </th>
            ))}
            <th scope="col" className="from-cell">
              {words.limitedBy}
            </th>
            <th scope="col" className="reason-cell">
              {words.reason}
            </th>
          </tr>
        </thead>
        <tbody>
          <Rows run={run} figures={figures} />
        </tbody>
      </table>
    </details>
  );
}
