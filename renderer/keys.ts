/** From a key press to a command. */

import { type Command, commands, perform } from './commands.ts';

/** The part of a keyboard event that matters. */
export type Press = Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/** Whether a press is what `keys` describes, such as `Mod+Shift+Z`. */
export function matches(keys: string, press: Press): boolean {
  const parts = keys.split('+');
  const key = (parts.at(-1) ?? '').toLowerCase();
  // With Alt some systems write other signs, so the key itself counts there.
  const byPlace = press.code.startsWith('Digit') || (press.altKey && press.code.startsWith('Key'));
  const pressed = byPlace ? press.code.replace(/^(?:Digit|Key)/, '').toLowerCase() : press.key.toLowerCase();
  return (
    pressed === key &&
    parts.includes('Mod') === (press.ctrlKey || press.metaKey) &&
    parts.includes('Shift') === press.shiftKey &&
    parts.includes('Alt') === press.altKey
  );
}

/** The command a press asks for; Ctrl+Y is taken as redo too. */
export const commandFor = (press: Press): Command | undefined =>
  commands.find(
    ({ id, keys }) => (keys !== undefined && matches(keys, press)) || (id === 'redo' && matches('Mod+Y', press)),
  );

/** Keys as shown on this machine. */
export function keysText(keys: string): string {
  const mac = /mac/i.test(globalThis.navigator?.platform ?? '');
  return keys.replace('Mod', mac ? '⌘' : 'Ctrl');
}

/** Whether the element takes running text, whose own undo is then meant. */
const isFreeText = (element: Element | null): boolean =>
  element instanceof HTMLTextAreaElement ||
  (element instanceof HTMLInputElement && !element.dataset.path && ['text', 'search'].includes(element.type));

/** Listens on the window; a field that is being typed into hands its text over before the command runs. */
export function listenToKeys(): () => void {
  const onKey = (event: KeyboardEvent) => {
    const command = commandFor(event);
    const focused = document.activeElement;
    if (!command || (isFreeText(focused) && (command.id === 'undo' || command.id === 'redo'))) return;
    event.preventDefault();
    if (focused instanceof HTMLInputElement && focused.dataset.path) {
      focused.blur();
      focused.focus();
    }
    perform(command.id);
  };
  window.addEventListener('keydown', onKey);
  return () => window.removeEventListener('keydown', onKey);
}
