/** The one or two inputs of a sweep with their ends. */

import { Button } from 'react-aria-components';
import type { SearchInput } from '../../core/index.ts';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import { useLook } from '../look.ts';
import { searchText } from '../strings/search.ts';
import { wholeWithin, withinLimits } from './bounds.ts';
import { shownValue } from './shown.ts';
import { type AxisSetup, setSearch, useSearch } from './store.ts';

const words = searchText;

/** Most values along one axis. */
const mostSteps = 200;

const scales = ['linear', 'log'] as const;

function ScaleChoice({ axis, set }: { readonly axis: AxisSetup; set(more: Partial<AxisSetup>): void }) {
  return (
    <select
      aria-label={words.scale}
      value={axis.scale}
      onChange={(event) => set({ scale: event.target.value === 'log' ? 'log' : 'linear' })}
    >
      {scales.map((scale) => (
        <option key={scale} value={scale}>
          {words.scales[scale]}
        </option>
      ))}
    </select>
  );
}

function RemoveAxis({ input, label }: { readonly input: string; readonly label: string }) {
  const axes = useSearch((state) => state.axes);
  return (
    <Button
      className="tiny"
      aria-label={words.remove(label)}
      onPress={() => setSearch({ axes: axes.filter((one) => one.input !== input) })}
    >
      ×
    </Button>
  );
}

function AxisRow({ axis, input }: { readonly axis: AxisSetup; readonly input: SearchInput }) {
  const axes = useSearch((state) => state.axes);
  useLook();
  const set = (more: Partial<AxisSetup>) =>
    setSearch({ axes: axes.map((one) => (one.input === axis.input ? { ...one, ...more } : one)) });
  const { label, unit, value } = input;
  const refuse = withinLimits(input);
  const whole = wholeWithin(2, mostSteps, words.stepsRefused);
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{shownValue(value, unit)}</td>
      <td>
        <TypedNumber label={words.from} unit={unit} value={axis.from} refuse={refuse} take={(from) => set({ from })} />
      </td>
      <td>
        <TypedNumber label={words.to} unit={unit} value={axis.to} refuse={refuse} take={(to) => set({ to })} />
      </td>
      <td>
        <TypedNumber label={words.steps} unit="" value={axis.steps} refuse={whole} take={(steps) => set({ steps })} />
      </td>
      <td>
        <ScaleChoice axis={axis} set={set} />
      </td>
      <td>
        <RemoveAxis input={axis.input} label={label} />
      </td>
    </tr>
  );
}

/** The rows; those whose input the machine no longer has are left out. */
export function AxisRows({ inputs }: { readonly inputs: readonly SearchInput[] }) {
  const axes = useSearch((state) => state.axes);
  if (axes.length === 0) return <p className="quiet">{words.goal.noInputs}</p>;
  return (
    <table className="doubt-table search-inputs">
      <thead>
        <tr>
          <th scope="col">{words.input}</th>
          <th scope="col">{words.now}</th>
          <th scope="col">{words.from}</th>
          <th scope="col">{words.to}</th>
          <th scope="col">{words.steps}</th>
          <th scope="col">{words.scale}</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {axes.map((axis) => {
          const input = inputs.find(({ id }) => id === axis.input);
          return input && <AxisRow key={axis.input} axis={axis} input={input} />;
        })}
      </tbody>
    </table>
  );
}
