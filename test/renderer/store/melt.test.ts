import { beforeEach, expect, test } from 'vitest';
import { meltStore, pickStation, setMelt, showSpot, toggleMelt } from '../../../renderer/store/melt.ts';
import { setView, viewStore } from '../../../renderer/store/view.ts';

const view = () => viewStore.getState();

beforeEach(() => {
  setMelt({ shown: false });
  setView({ section: null, turning: false, mark: null });
});

test('showing the melt opens the machine along its axis and stops the screw; hiding it closes it again', () => {
  setView({ turning: true });
  toggleMelt();
  expect(meltStore.getState().shown).toBe(true);
  expect(view()).toMatchObject({ section: 0, turning: false });
  toggleMelt();
  expect(meltStore.getState().shown).toBe(false);
  expect(view().section).toBeNull();
});

test('a dead spot is marked with its number and looked at; a picked position takes the mark over, the camera stays', () => {
  const { count } = view().flight;
  showSpot(2, 'ledge at adapter', { z: 0.1, r: 0.004 });
  expect(meltStore.getState().shown).toBe(true);
  expect(view().mark).toEqual({ z: 0.1, label: 'ledge at adapter', spot: 2 });
  expect(view().flight).toMatchObject({ to: { z: 0.1, near: { r: 0.004 } }, count: count + 1 });
  pickStation(0.05);
  expect(view().mark).toEqual({ z: 0.05, label: '' });
  expect(view().flight.count).toBe(count + 1);
});
