/** Which law is fitted, and what of it is held. */

import type { Material } from '../../core/index.ts';
import { CheckField } from '../fields/CheckField.tsx';
import { fitText as words } from '../strings/fit.ts';
import { setFit, useFit } from './store.ts';

function Select<T extends string>(props: {
  readonly label: string;
  readonly value: T;
  readonly options: Readonly<Record<T, string>>;
  pick(value: T): void;
}) {
  return (
    <label className="fit-line">
      <span>{props.label}</span>
      <select value={props.value} onChange={({ target }) => props.pick(target.value as T)}>
        {(Object.entries(props.options) as [T, string][]).map(([key, name]) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The part. */
export function Choices({ materials, material }: { materials: readonly Material[]; material: Material }) {
  const { model, shift, holdTransition, filled } = useFit((state) => state);
  const names = Object.fromEntries(materials.map(({ id, name }) => [id, name]));
  return (
    <div className="fit-choices">
      <Select
        label={words.material}
        value={material.id}
        options={names}
        pick={(materialId) => setFit({ materialId })}
      />
      <Select label={words.law} value={model} options={words.laws} pick={(next) => setFit({ model: next })} />
      {model !== 'crossWlf' && (
        <Select label={words.shift} value={shift} options={words.shifts} pick={(next) => setFit({ shift: next })} />
      )}
      {model === 'carreauYasuda' && (
        <CheckField
          label={words.holdTransition}
          checked={holdTransition}
          onChange={(next) => setFit({ holdTransition: next })}
        />
      )}
      {material.filler && (
        <div title={words.filledHelp}>
          <CheckField label={words.filled} checked={filled} onChange={(next) => setFit({ filled: next })} />
        </div>
      )}
    </div>
  );
}
