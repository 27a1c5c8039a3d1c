import { expect, test } from 'vitest';
import { menuTemplate } from '../../electron/menu.ts';
import { commands } from '../../renderer/commands.ts';
import { commandFor, matches, type Press } from '../../renderer/keys.ts';

const press = (key: string, more: Partial<Press> = {}): Press => ({
  key,
  code: '',
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...more,
});

test('undo and redo are told apart by Shift, and Ctrl+Y is redo too', () => {
  expect(commandFor(press('z', { ctrlKey: true }))?.id).toBe('undo');
  expect(commandFor(press('Z', { ctrlKey: true, shiftKey: true }))?.id).toBe('redo');
  expect(commandFor(press('y', { metaKey: true }))?.id).toBe('redo');
  expect(commandFor(press('z'))).toBeUndefined();
});

test('digits are matched by their key, whatever Alt makes of them', () => {
  expect(matches('Alt+1', press('¡', { code: 'Digit1', altKey: true }))).toBe(true);
});

test('ids and keys are each used once, and every command has words', () => {
  const ids = commands.map(({ id }) => id);
  const keys = commands.flatMap((command) => command.keys ?? []);
  expect(new Set(ids).size).toBe(ids.length);
  expect(new Set(keys).size).toBe(keys.length);
  expect(commands.every(({ label }) => label.length > 2)).toBe(true);
});

test('every item of the desktop menu is a command', () => {
  const sent: string[] = [];
  const items = menuTemplate('linux', (id) => sent.push(id)).flatMap(({ submenu }) =>
    Array.isArray(submenu) ? submenu : [],
  );
  for (const { click } of items) Reflect.apply(click ?? (() => undefined), null, []);
  expect(sent.length).toBeGreaterThan(5);
  const ids = commands.map(({ id }) => id);
  for (const id of sent) expect(ids).toContain(id);
});
