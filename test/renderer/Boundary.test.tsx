// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, expect, test, vi } from 'vitest';
import { Boundary } from '../../renderer/Boundary.tsx';

afterEach(cleanup);

let broken = true;

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
  expect(screen.getByRole('alert').textContent).toContain('the part fell off');
  broken = false;
  fireEvent.click(screen.getByRole('button', { name: 'Carry on' }));
  expect(screen.getByText('whole again')).toBeTruthy();
});
