// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import type userChart from 'uplot';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { setBridge } from '../../../renderer/bridge.ts';
import { axis, Chart, type Ink } from '../../../renderer/plots/Chart.tsx';
import { zoomingOptions } from '../../../renderer/plots/plotHandle.ts';
import { viewStore } from '../../../renderer/store/view.ts';
import { plotText } from '../../../renderer/strings/plots.ts';

// Charts ask for the screen's pixel ratio when they are loaded, and draw on what this stand-in for a browser lacks.
vi.hoisted(() => {
  const answer = { matches: false, addEventListener: () => undefined, removeEventListener: () => undefined };
  const pen = new Proxy(
    {},
    { get: (_, key) => (key === 'measureText' ? () => ({ width: 10 }) : () => undefined), set: () => true },
  );
  Object.assign(globalThis, {
    matchMedia: () => answer,
    CSS: { escape: (name: string) => name },
    ResizeObserver: class {
      observe() {}
      disconnect() {}
      unobserve() {}
    },
    Path2D: class {
      moveTo() {}
      lineTo() {}
      rect() {}
      arc() {}
      closePath() {}
    },
  });
  if (globalThis.HTMLCanvasElement) Object.assign(HTMLCanvasElement.prototype, { getContext: () => pen });
});

const data: userChart.AlignedData = [
  [0, 1, 2, 3, 4],
  [0, 1, 4, 9, 16],
];
const options = (ink: Ink) => ({
  scales: { x: { time: false } },
  axes: [axis(ink, 'Time, s'), axis(ink, 'Way, mm')],
  series: [{ label: 'Time' }, { label: 'Way' }],
});

beforeEach(() => {
  viewStore.setState({ notice: null });
});
afterEach(() => {
  cleanup();
  setBridge(null);
});

const chart = () => screen.getByRole('group', { name: 'A fall' });
const menuItem = async (name: string) => {
  fireEvent.click(screen.getByRole('button', { name: plotText.menu('A fall') }));
  return screen.findByRole('menuitem', { name });
};

test('keys zoom in and back to the whole', async () => {
  render(<Chart label="A fall" data={data} options={options} height={200} />);
  expect(chart().dataset.zoomed).toBe('false');
  // the plot computes its ranges a moment after it is made
  await vi.waitFor(() => {
    fireEvent.keyDown(chart(), { key: '+' });
    expect(chart().dataset.zoomed).toBe('true');
  });
  fireEvent.keyDown(chart(), { key: '0' });
  expect(chart().dataset.zoomed).toBe('false');
});

test('copied data equal what is plotted, with units in the head', async () => {
  let copied = '';
  Object.assign(navigator, {
    clipboard: {
      writeText: async (text: string) => {
        copied = text;
      },
    },
  });
  render(<Chart label="A fall" data={data} options={options} height={200} />);
  fireEvent.click(await menuItem(plotText.data));
  await vi.waitFor(() => expect(copied).not.toBe(''));
  const [head, ...rows] = copied
    .trimEnd()
    .split('\n')
    .map((row) => row.split('\t'));
  expect(head).toEqual(['Time, s', 'Way, mm']);
  expect(rows.map((row) => row.map(Number))).toEqual(Array.from(data[0], (x, i) => [x, data[1]?.[i]]));
});

test('where the clipboard is refused the host saves the data', async () => {
  const saved: [string, unknown][] = [];
  Object.assign(navigator, { clipboard: { writeText: () => Promise.reject(new Error('no')) } });
  setBridge({
    exportFile: async (name: string, text: unknown) => {
      saved.push([name, text]);
      return { ok: true, value: { handle: null, path: null, name } };
    },
  } as never);
  render(<Chart label="A fall" data={data} options={options} height={200} />);
  fireEvent.click(await menuItem(plotText.data));
  await vi.waitFor(() => expect(saved).toHaveLength(1));
  expect(saved[0]?.[0]).toBe('a-fall.tsv');
  expect(String(saved[0]?.[1])).toMatch(/^Time, s\tWay, mm\n0\t0\n/);
  await vi.waitFor(() => expect(viewStore.getState().notice?.text).toContain('a-fall.tsv'));
});

test.each([5, 0, -3, 1e-6])('a single place at %s gets an axis with some width', (place) => {
  const hold = { current: null, whole: null, set: () => undefined };
  const { x } = zoomingOptions({ width: 1, height: 1, series: [], scales: { x: { time: false } } }, hold).scales ?? {};
  const range = x?.range as (plot: unknown, min: number, max: number, key: string) => [number, number];
  const [from, to] = range({ data: [[place], [1]] }, place, place, 'x');
  expect(from).toBeLessThan(place);
  expect(to).toBeGreaterThan(place);
});
