/** Stating a range for any number: find it by name, give low and high. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { formatNumber } from '../../core/index.ts';
import { goToRefused } from '../fields/refused.ts';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import type { DoubtableField } from '../solve/doubtable.ts';
import { doubtText } from '../strings/doubt.ts';
import { addRange } from './ranges.ts';

const words = doubtText.add;

/** Most names listed at once. */
const listed = 8;

/** A range of a tenth about a value, or of 1 about nothing, to begin with. */
function firstRange(value: number): readonly [number, number] {
  const off = value === 0 ? 1 : Math.abs(value) / 10;
  const rounded = (end: number) => Number(end.toPrecision(6));
  return [rounded(value - off), rounded(value + off)];
}

const named = ({ label, value, unit }: DoubtableField): string =>
  `${label}: ${formatNumber(value, 6)}${unit ? ` ${unit}` : ''}`;

/** Every word typed has to be in the name. */
function matching(fields: readonly DoubtableField[], typed: string): readonly DoubtableField[] {
  const parts = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return fields.filter(({ label }) => parts.every((part) => label.toLowerCase().includes(part)));
}

function Chosen({ field, leave }: { readonly field: DoubtableField; leave(): void }) {
  const [[low, high], setRange] = useState(() => firstRange(field.value));
  const value = formatNumber(field.value, 6);
  const problem = !(low < high) ? words.order : low > field.value || high < field.value ? words.holds(value) : null;
  return (
    <div className="range-form">
      <p>
        {words.chosen} <b>{named(field)}</b>
      </p>
      <TypedNumber label={words.low} unit={field.unit} value={low} take={(next) => setRange([next, high])} />
      <TypedNumber label={words.high} unit={field.unit} value={high} take={(next) => setRange([low, next])} />
      <Button
        className="tool"
        isDisabled={problem !== null}
        onPress={({ target }) => {
          if (goToRefused(target)) return;
          addRange(field.path, field.label, low, high);
          leave();
        }}
      >
        {words.add}
      </Button>
      <Button className="tool" onPress={leave}>
        {words.cancel}
      </Button>
      {problem && (
        <p className="issue" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

function Finder({
  fields,
  choose,
}: {
  readonly fields: readonly DoubtableField[];
  choose(field: DoubtableField): void;
}) {
  const [typed, setTyped] = useState('');
  const found = typed.trim() === '' ? [] : matching(fields, typed);
  return (
    <>
      <input
        className="finder"
        type="search"
        aria-label={words.find}
        placeholder={words.find}
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={(event) => {
          const [first] = found;
          if (event.key === 'Enter' && first) choose(first);
        }}
      />
      <ul className="range-found">
        {found.slice(0, listed).map((field) => (
          <li key={field.path}>
            <Button className="command" onPress={() => choose(field)}>
              {named(field)}
            </Button>
          </li>
        ))}
        {found.length > listed && <li className="quiet">{words.more(found.length - listed)}</li>}
        {typed.trim() !== '' && found.length === 0 && <li className="quiet">{words.none}</li>}
      </ul>
    </>
  );
}

/** The part below the inputs. */
export function AddRange({ fields }: { readonly fields: readonly DoubtableField[] }) {
  const [chosen, choose] = useState<DoubtableField | null>(null);
  return (
    <details className="add-range" open>
      <summary>{words.title}</summary>
      {chosen ? (
        <Chosen key={chosen.path} field={chosen} leave={() => choose(null)} />
      ) : (
        <Finder fields={fields} choose={choose} />
      )}
    </details>
  );
}
