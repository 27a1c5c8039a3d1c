/** Finding a number that can be varied, by words. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { SearchInput } from '../../core/index.ts';
import { searchText } from '../strings/search.ts';
import { shownValue } from './shown.ts';

const words = searchText.pick;

/** Most names listed at once. */
const listed = 8;

/** Every word typed has to be in the name. */
function matching(inputs: readonly SearchInput[], typed: string): readonly SearchInput[] {
  const parts = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (parts.length === 0) return inputs.filter(({ id }) => id.startsWith('joint.'));
  return inputs.filter(({ label }) => parts.every((part) => label.toLowerCase().includes(part)));
}

function Choice({ input, choose }: { readonly input: SearchInput; choose(input: SearchInput): void }) {
  const { label, value, low, high, unit } = input;
  return (
    <li>
      <Button className="command" onPress={() => choose(input)}>
        <span>{words.named(label, shownValue(value, unit))}</span>
        <span className="quiet">{words.reach(shownValue(low, unit, 4), shownValue(high, unit, 4))}</span>
      </Button>
    </li>
  );
}

/** The finder; without words it lists the numbers that move together. */
export function PickInput(props: {
  readonly inputs: readonly SearchInput[];
  /** why nothing more can be added, or null */
  readonly full: string | null;
  /** why this one cannot be added, or null */
  refuse(input: SearchInput): string | null;
  choose(input: SearchInput): void;
}) {
  const { inputs, full, refuse, choose } = props;
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [open, setOpen] = useState(false);
  if (full !== null) return <p className="quiet">{full}</p>;
  const found = matching(inputs, typed);
  const take = (input: SearchInput) => {
    const refusal = refuse(input);
    setProblem(refusal);
    if (refusal !== null) return;
    setTyped('');
    setOpen(false);
    choose(input);
  };
  return (
    <details className="add-range pick-input" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.title}</summary>
      <input
        className="finder"
        type="search"
        aria-label={words.find}
        placeholder={words.find}
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={(event) => {
          const [first] = found;
          if (event.key === 'Enter' && first && typed.trim() !== '') take(first);
        }}
      />
      {problem && (
        <p className="issue" role="alert">
          {problem}
        </p>
      )}
      {typed.trim() === '' && <h3>{words.joint}</h3>}
      <ul className="range-found">
        {found.slice(0, listed).map((input) => (
          <Choice key={input.id} input={input} choose={take} />
        ))}
        {found.length > listed && <li className="quiet">{words.more(found.length - listed)}</li>}
        {found.length === 0 && <li className="quiet">{words.none}</li>}
      </ul>
    </details>
  );
}
