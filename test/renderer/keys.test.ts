import { expect, test } from 'vitest';
import { argumentChecks } from '../../electron/contract.ts';
import { menuTemplate } from '../../electron/menuTemplate.ts';
import type { MenuGroup } from '../../renderer/bridge.ts';
import { commandOf, commands } from '../../renderer/commands.ts';
import { followMenu, menuNow } from '../../renderer/hostMenu.ts';
import { commandFor, matches, type Press } from '../../renderer/keys.ts';
import { applyEdit, loadProject } from '../../renderer/store/project.ts';
import { setView } from '../../renderer/store/view.ts';
import { changedDemo } from '../helpers/projects.ts';

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

test('the host’s menu shows every command with its keys, and its items send their ids', () => {
  const groups = menuNow();
  expect(argumentChecks.setMenu.safeParse({ groups }).success).toBe(true);
  const sent: string[] = [];
  const items = menuTemplate('linux', groups, (id) => sent.push(id)).flatMap(({ submenu }) =>
    Array.isArray(submenu) ? submenu : [],
  );
  for (const { click } of items) Reflect.apply(click ?? (() => undefined), null, []);
  expect(sent).toEqual(commands.map(({ id }) => id));
  expect(items.find(({ label }) => label === commandOf('save').label)?.accelerator).toBe('CmdOrCtrl+S');
});

test('the host is told of its menu again when what can be done changes', () => {
  const told: boolean[] = [];
  const undoable = (groups: readonly MenuGroup[]) =>
    groups.flatMap(({ items }) => items).find(({ id }) => id === 'undo')?.enabled ?? false;
  loadProject(
    changedDemo(() => undefined),
    { handle: null, name: 'demo.json' },
  );
  const stop = followMenu({ setMenu: (groups) => told.push(undoable(groups)) });
  setView({ hoverZ: 0.01 });
  applyEdit((project) => ({ ...project, name: 'Another' }), { label: 'Name' });
  stop();
  applyEdit((project) => ({ ...project, name: 'A third' }), { label: 'Name' });
  expect(told).toEqual([false, true]);
});
