/** The inputs of a goal with their bounds and makeable steps. */

import { Button } from 'react-aria-components';
import type { SearchInput } from '../../core/index.ts';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import { useLook } from '../look.ts';
import { searchText } from '../strings/search.ts';
import { withinLimits } from './bounds.ts';
import { shownValue } from './shown.ts';
import { type GoalInputSetup, setSearch, useSearch } from './store.ts';

const words = searchText;

function RemoveInput({ input, label }: { readonly input: string; readonly label: string }) {
  const all = useSearch((state) => state.goalInputs);
  return (
    <Button
      className="tiny"
      aria-label={words.remove(label)}
      onPress={() => setSearch({ goalInputs: all.filter((one) => one.input !== input) })}
    >
      ×
    </Button>
  );
}

function GoalInputRow({ setup, input }: { readonly setup: GoalInputSetup; readonly input: SearchInput }) {
  const all = useSearch((state) => state.goalInputs);
  useLook();
  const { label, unit, value } = input;
  const { low, high, step } = setup;
  const set = (more: Partial<GoalInputSetup>) =>
    setSearch({ goalInputs: all.map((one) => (one.input === setup.input ? { ...one, ...more } : one)) });
  const below = (end: number) => withinLimits(input)(end) ?? (end < high ? null : words.order);
  const above = (end: number) => withinLimits(input)(end) ?? (end > low ? null : words.order);
  const fits = (size: number) => (size > 0 && size <= high - low ? null : words.stepRefused);
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{shownValue(value, unit)}</td>
      <td>
        <TypedNumber label={words.low} unit={unit} value={low} refuse={below} take={(next) => set({ low: next })} />
      </td>
      <td>
        <TypedNumber label={words.high} unit={unit} value={high} refuse={above} take={(next) => set({ high: next })} />
      </td>
      <td title={words.stepHelp}>
        <TypedNumber
          label={words.step}
          // a step of temperatures is a difference, which no thermometer shows
          unit={unit === '°C' ? 'K' : unit}
          value={step}
          refuse={fits}
          take={(next) => set({ step: next })}
        />
      </td>
      <td>
        <RemoveInput input={setup.input} label={label} />
      </td>
    </tr>
  );
}

/** The rows; those whose input the machine no longer has are left out. */
export function GoalInputs({ inputs }: { readonly inputs: readonly SearchInput[] }) {
  const all = useSearch((state) => state.goalInputs);
  if (all.length === 0) return <p className="quiet">{words.goal.noInputs}</p>;
  return (
    <table className="doubt-table search-inputs">
      <thead>
        <tr>
          {[words.input, words.now, words.low, words.high, words.step].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
          <td />
        </tr>
      </thead>
      <tbody>
        {all.map((setup) => {
          const input = inputs.find(({ id }) => id === setup.input);
          return input && <GoalInputRow key={setup.input} setup={setup} input={input} />;
        })}
      </tbody>
    </table>
  );
}
