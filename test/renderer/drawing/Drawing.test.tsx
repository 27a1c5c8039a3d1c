// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import { Drawing } from '../../../renderer/drawing/Drawing.tsx';
import { drawingStore, setDrawing } from '../../../renderer/drawing/store.ts';
import { undo } from '../../../renderer/store/project.ts';
import { viewStore } from '../../../renderer/store/view.ts';
import { changed, demo } from './examples.ts';
import { border, freshDrawings, grip, lengths, open, revision, size, steps, zoomOf } from './opened.tsx';

function press(element: Element, keys = {}): void {
  fireEvent.pointerDown(element, { button: 0, clientX: 300, clientY: 200, ...keys });
}
const move = (dx: number, dy = 0, keys = {}) =>
  fireEvent.pointerMove(window, { clientX: 300 + dx, clientY: 200 + dy, ...keys });
const release = () => fireEvent.pointerUp(window);

freshDrawings();

describe('pulling', () => {
  test('shows the value and the difference at once, and is one named step when let go', () => {
    open();
    const zoom = zoomOf();
    press(border());
    for (let mm = 1; mm <= 5; mm++) move(mm * zoom);
    expect(screen.getByTestId('pull').textContent).toMatch(/60 mm.*was 55 mm, \+5 mm/);
    expect(border().getAttribute('aria-valuenow')).toBe('60');
    expect(lengths()).toEqual([55, 55, 50]);
    expect(steps()).toEqual([]);
    release();
    expect(lengths()).toEqual([60, 50, 50]);
    expect(steps()).toEqual(['Section 1 feed: Length']);
    expect(screen.queryByTestId('pull')).toBeNull();
    undo();
    expect(lengths()).toEqual([55, 55, 50]);
  });

  test('Escape gives up and later moves do nothing', () => {
    open();
    press(border());
    move(40);
    expect(drawingStore.getState().pull?.value).not.toBe(55);
    fireEvent.keyDown(window, { key: 'Escape' });
    move(80);
    release();
    expect(lengths()).toEqual([55, 55, 50]);
    expect(steps()).toEqual([]);
  });

  test('stops at the limit and says what is in the way', () => {
    open();
    press(grip('section/2/lengthMm'));
    move(200);
    const { pull } = drawingStore.getState();
    expect(pull?.value).toBeLessThan(52.01);
    expect(screen.getByTestId('pull').textContent).toMatch(/longer than the barrel.*162 mm/);
    release();
    expect(lengths()[2]).toBe(pull?.value);
  });

  test('Shift pressed on the way turns the manners round', () => {
    open();
    const zoom = zoomOf();
    press(border());
    move(-10 * zoom);
    fireEvent.keyDown(window, { key: 'Shift', shiftKey: true });
    release();
    expect(lengths()).toEqual([45, 55, 50]);
  });

  test('Alt is fine, and a diameter is pulled across the axis by both its sides', () => {
    open();
    const zoom = zoomOf();
    press(grip('section/0/rootDiameterEndMm'), { altKey: true });
    move(0, -0.25 * zoom, { altKey: true });
    release();
    expect(revision().screw.sections[0]?.rootDiameterEndMm).toBeCloseTo(6.9, 2);
    expect(revision().screw.sections[1]?.rootDiameterStartMm).toBeCloseTo(6.9, 2);
  });

  test('sticks to a neighbour by name', () => {
    open();
    setDrawing({ view: { zoom: 20, z: 178, r: 0 } });
    cleanup();
    render(<Drawing />);
    press(grip('piece/2/angle'));
    const length = (1.9 / Math.tan((Math.PI / 180) * 30.3)) as number;
    move(((length - 3.291) / 2) * 20);
    expect(screen.getByTestId('pull').textContent).toMatch(/60°? .*same as the tip’s angle/);
  });

  test('a locked revision says so and does not move', () => {
    open(changed(demo(), (open) => Object.assign(open, { locked: true })));
    press(border());
    move(40);
    release();
    fireEvent.keyDown(border(), { key: 'ArrowRight' });
    expect(lengths()).toEqual([55, 55, 50]);
    expect(screen.getByText(/revision is locked/)).toBeTruthy();
    expect(border().getAttribute('aria-disabled')).toBe('true');
  });
});

describe('by keys', () => {
  test('arrows step, Shift ten steps, Alt a tenth; a run is undone as one', () => {
    open();
    fireEvent.keyDown(border(), { key: 'ArrowRight' });
    fireEvent.keyDown(border(), { key: 'ArrowUp', shiftKey: true });
    fireEvent.keyDown(border(), { key: 'ArrowLeft', altKey: true });
    expect(lengths()).toEqual([56.09, 53.91, 50]);
    undo();
    expect(lengths()).toEqual([55, 55, 50]);
  });

  test('every dimension shown is a slider in the tab order, told with unit and limits', () => {
    open();
    const sliders = [...document.querySelectorAll<SVGElement>('[role="slider"]')];
    expect(sliders.length).toBeGreaterThan(35);
    for (const slider of sliders) {
      expect(slider.tabIndex).toBe(0);
      const [now, min, max] = ['now', 'min', 'max'].map((end) => Number(slider.getAttribute(`aria-value${end}`)));
      expect(now).toBeGreaterThanOrEqual(min as number);
      expect(now).toBeLessThanOrEqual(max as number);
      expect(slider.getAttribute('aria-valuetext')).toMatch(/(mm|°), .* to /);
    }
    expect(new Set(sliders.map((slider) => slider.getAttribute('aria-label'))).size).toBe(sliders.length);
  });

  test('the focus finds the machine’s own limits and shows the field', () => {
    open();
    fireEvent.focus(grip('piece/3/startDiameterMm'));
    expect(viewStore.getState().part).toBe('nozzle');
    expect(viewStore.getState().helpFor?.key).toBe('revisions/2/nozzle/segments/3/startDiameterMm');
    fireEvent.focus(grip('zone/1/endMm'));
    expect(grip('zone/1/endMm').getAttribute('aria-valuemax')).toMatch(/^10[78]/);
    expect(drawingStore.getState().chosen).toEqual({ list: 'zones', index: 1 });
  });

  test('at a limit the step stops with the reason', () => {
    open();
    const last = () => grip('section/2/lengthMm');
    for (let i = 0; i < 4; i++) fireEvent.keyDown(last(), { key: 'PageUp' });
    expect(lengths()[2]).toBeLessThan(52.01);
    expect(screen.getByText(/longer than the barrel/)).toBeTruthy();
  });
});

describe('typing a number', () => {
  const field = () => document.querySelector<HTMLInputElement>('.type-over input');
  const input = () => field() as HTMLInputElement;
  const begin = () => fireEvent.keyDown(border(), { key: 'Enter' });
  const type = (text: string) => {
    fireEvent.change(input(), { target: { value: text } });
    fireEvent.keyDown(input(), { key: 'Enter' });
  };

  test.each([
    ['60', [60, 50, 50]],
    ['5,8 cm', [58, 52, 50]],
    ['2 in', [50.8, 59.2, 50]],
  ])('%s is read as a field reads it, and obeys how pulls behave', (typed, expected) => {
    open();
    begin();
    expect(input().value).toBe('55');
    type(typed);
    expect(lengths()).toEqual(expected);
    expect(field()).toBeNull();
    expect(steps()).toEqual(['Section 1 feed: Length']);
  });

  test('what cannot be is told and stays typed; Escape drops it', () => {
    open();
    begin();
    type('300');
    expect(input().value).toBe('300');
    expect(document.querySelector('.type-over [role="alert"]')?.textContent).toMatch(
      /Section 2: The number is too small/,
    );
    fireEvent.keyDown(input(), { key: 'Escape' });
    expect(field()).toBeNull();
    expect(lengths()).toEqual([55, 55, 50]);
  });

  test('a click on the number opens it there', () => {
    open();
    fireEvent.click(screen.getByLabelText(/^Type Section 1 feed: Length: \S/));
    expect(input().value).toBe('55');
  });
});

describe('linked with the other views', () => {
  test('pointing tells the position, a click marks it and chooses what lies there', () => {
    open();
    const svg = document.querySelector('svg[role="presentation"]') as SVGElement;
    const zoom = zoomOf();
    const x = (z: number) =>
      Number(/translate\(([-\d.]+)/.exec(border().getAttribute('transform') ?? '')?.[1]) + (z - 55) * zoom;
    fireEvent.pointerMove(svg, { clientX: x(80), clientY: size.height / 2 });
    expect(viewStore.getState().hoverZ).toBeCloseTo(0.08, 3);
    fireEvent.pointerDown(svg, { button: 0, clientX: x(80), clientY: size.height / 2 });
    fireEvent.pointerUp(svg, { clientX: x(80), clientY: size.height / 2 });
    expect(viewStore.getState().mark?.z).toBeCloseTo(0.08, 3);
    expect(drawingStore.getState().chosen).toEqual({ list: 'sections', index: 1 });
    fireEvent.pointerMove(svg, { clientX: 1, clientY: 5 });
    expect(viewStore.getState().hoverZ).toBeNull();
  });

  test('keys move, zoom and fit', () => {
    open();
    const sheet = document.querySelector('.drawing') as Element;
    const before = zoomOf();
    fireEvent.keyDown(sheet, { key: '+' });
    expect(zoomOf()).toBeCloseTo(before * 1.4, 6);
    fireEvent.keyDown(sheet, { key: 'ArrowRight' });
    fireEvent.keyDown(sheet, { key: '0' });
    expect(zoomOf()).toBeCloseTo(before, 6);
  });
});
