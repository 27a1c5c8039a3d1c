/** @vitest-environment jsdom */

import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { tourText } from '../../../renderer/strings/tour.ts';
import { placeCard } from '../../../renderer/tour/place.ts';
import { stops } from '../../../renderer/tour/stops.ts';
import { offerTour, startTour, tourStore } from '../../../renderer/tour/store.ts';
import { Tour } from '../../../renderer/tour/Tour.tsx';

class StillObserver {
  observe() {}
  disconnect() {}
}

beforeEach(() => {
  localStorage.clear();
  tourStore.setState({ at: null });
  Object.assign(globalThis, { ResizeObserver: StillObserver });
  Element.prototype.scrollIntoView = () => undefined;
});
afterEach(cleanup);

const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
const titleOf = (index: number) => tourText.stops[stops[index]?.id ?? 'welcome'].title;

describe('the tour', () => {
  test('is offered once, can be walked both ways, and ends after its last stop', () => {
    offerTour();
    render(<Tour />);
    expect(screen.getByRole('heading').textContent).toBe(titleOf(0));
    press(tourText.next);
    expect(screen.getByRole('heading').textContent).toBe(titleOf(1));
    press(tourText.back);
    expect(screen.getByRole('heading').textContent).toBe(titleOf(0));
    for (let i = 1; i < stops.length; i++) press(tourText.next);
    press(tourText.done);
    expect(screen.queryByRole('heading')).toBeNull();
    offerTour();
    expect(tourStore.getState().at).toBeNull();
  });

  test('is left with Escape and can be called back', () => {
    startTour();
    render(<Tour />);
    const card = screen.getByRole('complementary');
    expect(document.activeElement).toBe(card);
    fireEvent.keyDown(card, { key: 'Escape' });
    expect(screen.queryByRole('complementary')).toBeNull();
    expect(localStorage.getItem('augerwright.tour')).toBe('seen');
  });
});

describe('the card', () => {
  const card = { width: 360, height: 200 };
  const room = { width: 1280, height: 800 };
  const boxes = [
    { left: 0, top: 40, width: 400, height: 760 },
    { left: 900, top: 40, width: 380, height: 760 },
    { left: 0, top: 0, width: 1280, height: 40 },
    { left: 0, top: 760, width: 1280, height: 40 },
    { left: 0, top: 0, width: 1280, height: 800 },
    { left: 900, top: -4000, width: 380, height: 9000 },
  ];

  test.each(boxes)('lies inside the window, beside %o where there is room', (box) => {
    const { left, top } = placeCard(box, card, room);
    expect(left).toBeGreaterThanOrEqual(0);
    expect(top).toBeGreaterThanOrEqual(0);
    expect(left + card.width).toBeLessThanOrEqual(room.width);
    expect(top + card.height).toBeLessThanOrEqual(room.height);
    const apart =
      left >= box.left + box.width ||
      left + card.width <= box.left ||
      top >= box.top + box.height ||
      top + card.height <= box.top;
    expect(apart).toBe(box.width < 1280 || box.height < 800);
  });

  test('stands in the middle where nothing is pointed at', () => {
    expect(placeCard(null, card, room)).toEqual({ left: 460, top: 300 });
  });
});
