/** A kind's options as fields, made from its own list. */

import { useId } from 'react';
import { allowedOf, type HandoverOption, type HandoverValues } from '../../core/index.ts';
import { CheckField } from '../fields/CheckField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import { handoverText as words } from '../strings/handover.ts';
import type { HandoverKind } from './solve/protocol.ts';
import { setOption } from './store.ts';

interface FieldProps<T extends HandoverOption = HandoverOption> {
  readonly option: T;
  readonly value: string | number | boolean;
  take(value: string | number | boolean): void;
}

type Of<K extends HandoverOption['kind']> = Extract<HandoverOption, { readonly kind: K }>;

function Choice({ option, value, take }: FieldProps<Of<'choice'>>) {
  const id = useId();
  return (
    <span className="handover-choice">
      <label htmlFor={id}>{option.label}</label>
      <select id={id} value={String(value)} onChange={({ target }) => take(target.value)}>
        {option.choices.map((choice) => (
          <option key={choice.id} value={choice.id}>
            {choice.label}
          </option>
        ))}
      </select>
    </span>
  );
}

function NumberOption({ option, value, take }: FieldProps<Of<'number'>>) {
  const { least, most } = option;
  const refuse = (given: number) => (given >= least && given <= most ? null : words.outside(allowedOf(option)));
  return <TypedNumber label={option.label} unit={option.unit} value={Number(value)} refuse={refuse} take={take} />;
}

function Field({ option, value, take }: FieldProps) {
  switch (option.kind) {
    case 'choice':
      return <Choice option={option} value={value} take={take} />;
    case 'number':
      return <NumberOption option={option} value={value} take={take} />;
    case 'text':
      return <TextField label={option.label} value={String(value)} maxLength={option.longest} onCommit={take} />;
    case 'flag':
      return <CheckField label={option.label} checked={value === true} onChange={take} />;
  }
}

interface ListProps {
  readonly kind: HandoverKind;
  readonly options: readonly HandoverOption[];
  readonly values: HandoverValues;
}

function Options({ kind, options, values }: ListProps) {
  return (
    <div className="handover-options">
      {options.map((option) => (
        <div key={option.id} className="handover-option">
          <Field
            option={option}
            value={values[option.id] ?? option.start}
            take={(value) => setOption(kind.id, option.id, value)}
          />
          <p className="quiet">{option.help}</p>
        </div>
      ))}
    </div>
  );
}

/** More texts than this are folded away: each has a start, and few are changed. */
const openTexts = 3;

/** The fields. */
export function OptionsForm({ kind, values }: { readonly kind: HandoverKind; readonly values: HandoverValues }) {
  if (kind.options.length === 0) return <p className="quiet">{words.noOptions}</p>;
  const texts = kind.options.filter((option) => option.kind === 'text');
  if (texts.length <= openTexts) return <Options {...{ kind, values }} options={kind.options} />;
  return (
    <>
      <Options {...{ kind, values }} options={kind.options.filter((option) => option.kind !== 'text')} />
      <details className="handover-texts">
        <summary>{words.texts(texts.length)}</summary>
        <Options {...{ kind, values }} options={texts} />
      </details>
    </>
  );
}
