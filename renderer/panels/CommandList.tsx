/** Every command, found by typing. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { commands, perform } from '../commands.ts';
import { keysText } from '../keys.ts';
import { setView } from '../store/view.ts';
import { text } from '../strings.ts';
import { DialogFrame } from './DialogFrame.tsx';

function run(id: string): void {
  setView({ dialog: 'none' });
  perform(id);
}

/** Whether a command's label holds every typed word, in any order: “fit viscosity” finds “Fit a viscosity law”. */
function isMeant(label: string, typed: string): boolean {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return words.every((word) => label.toLowerCase().includes(word));
}

function Found() {
  const [typed, setTyped] = useState('');
  const found = commands.filter(({ id, label }) => id !== 'commands' && isMeant(label, typed));
  return (
    <>
      <input
        className="finder"
        type="search"
        aria-label={text.commands.find}
        placeholder={text.commands.find}
        // biome-ignore lint/a11y/noAutofocus: the dialog exists to be typed into
        autoFocus
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={(event) => {
          const first = found.find((command) => command.enabled());
          if (event.key === 'Enter' && first) run(first.id);
        }}
      />
      <ul className="command-list">
        {found.map((command) => (
          <li key={command.id}>
            <Button className="command" isDisabled={!command.enabled()} onPress={() => run(command.id)}>
              <span>{command.label}</span>
              {command.keys && <kbd>{keysText(command.keys)}</kbd>}
            </Button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** The dialog. */
export const CommandList = () => (
  <DialogFrame id="commands" title={text.commands.title}>
    <Found />
  </DialogFrame>
);
