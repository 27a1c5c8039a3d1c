// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, expect, test, vi } from 'vitest';
import { Boundary } from '../../renderer/Boundary.tsx';
import { setBridge } from '../../renderer/bridge.ts';
import { memoryBridge } from '../helpers/memoryBridge.ts';

afterEach(cleanup);

let broken = true;
const logged: string[] = [];
const { bridge } = memoryBridge({ handle: null, path: null, name: 'a.json', text: '{}' });
setBridge({
  ...bridge,
  logFault: async (message) => {
    logged.push(message);
    return { ok: true, value: null };
  },
});

function Part() {
  if (broken) throw new Error('the part fell off');
  return <p>whole again</p>;
}

test('a fault while drawing shows what broke and a way on', () => {
  const quiet = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  render(
    <Boundary>
      <Part />
    </Boundary>,
  );
  quiet.mockRestore();
  expect(logged).toEqual([expect.stringContaining('the part fell off')]);
  expect(screen.getByRole('button', { name: 'Save a copy' })).toBeTruthy();
  expect(screen.getByRole('alert').textContent).toContain('the part fell off');
  broken = false;
  fireEvent.click(screen.getByRole('button', { name: 'Show again' }));
  expect(screen.getByText('whole again')).toBeTruthy();
});
