/** What each column of a table was taken for, with the choice to take it for something else. */

import type { BenchColumn, BenchCsvChoices, BenchImport } from '../../core/index.ts';
import { benchText } from '../strings/bench.ts';
import type { BenchField } from './names.ts';
import { setBench, useBench } from './store.ts';

const words = benchText.import;

/** The choice for an unused column. */
const unused = '-';

/** Units that a column of a kind can be said to be in; empty where it has none or only one is known. */
const unitsOf: Readonly<Partial<Record<BenchField, readonly string[]>>> = {
  speed: ['rpm', 'rev/s'],
  tempC: ['°C', '°F', 'K'],
  seconds: ['s', 'min', 'h'],
  grams: ['g', 'kg', 'mg', 'oz', 'lb'],
  rate: ['g/min', 'g/h', 'kg/h', 'g/s'],
  torque: ['N·m', 'N·cm', 'kgf·cm', 'lbf·in'],
  current: ['A', 'mA'],
};

const sample = (read: BenchImport, index: number): string =>
  read.preview
    .filter(({ line }) => line > read.headerLine)
    .map(({ cells }) => cells[index] ?? '')
    .filter((cell) => cell.trim() !== '')
    .slice(0, 3)
    .join(' · ');

interface Props {
  readonly read: BenchImport;
  readonly choices: BenchCsvChoices;
}

/** `list` with `value` at `index`, places before it left open. */
function placed<T>(list: readonly (T | undefined)[] | undefined, index: number, value: T): (T | undefined)[] {
  const copy = [...(list ?? [])];
  while (copy.length < index) copy.push(undefined);
  copy[index] = value;
  return copy;
}

function Column({ column, read, choices }: Props & { readonly column: BenchColumn }) {
  const table = useBench((state) => state.table);
  const { index, field, unit, header, reason, order } = column;
  const change = (next: BenchCsvChoices) =>
    table && setBench({ table: { ...table, choices: { ...choices, ...next } } });
  const units = field === null ? [] : (unitsOf[field] ?? []);
  return (
    <tr className={field === null ? 'left-out' : ''}>
      <td className="num">{index + 1}</td>
      <th scope="row">{header || '–'}</th>
      <td className="words quiet">{sample(read, index)}</td>
      <td className="nowrap">
        <select
          aria-label={`${header}: ${words.columns}`}
          value={field ?? unused}
          onChange={({ target }) =>
            change({
              fields: placed(choices.fields, index, target.value === unused ? null : (target.value as BenchField)),
            })
          }
        >
          <option value={unused}>{words.unused}</option>
          {Object.entries(benchText.csvFields).map(([key, name]) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
        {order !== null && ` ${order + 1}`}
      </td>
      <td>
        {units.length > 0 && (
          <select
            aria-label={`${header}: ${words.unit}`}
            value={unit}
            onChange={({ target }) => change({ units: placed(choices.units, index, target.value) })}
          >
            {!units.includes(unit) && <option value={unit}>{unit || `${units[0]}, ${words.assumed}`}</option>}
            {units.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        )}
      </td>
      <td className="words quiet">{reason}</td>
    </tr>
  );
}

/** The table of columns. */
export function ImportColumns({ read, choices }: Props) {
  return (
    <div className="bench-scroll">
      <table className="bench-table" data-testid="columns">
        <thead>
          <tr>
            {['#', words.column, words.standsThere, words.takenFor, words.unit, words.because].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {read.columns.map((column) => (
            <Column key={column.index} {...{ column, read, choices }} />
          ))}
        </tbody>
      </table>
    </div>
  );
}
