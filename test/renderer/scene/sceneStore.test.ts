import { beforeEach, expect, test } from 'vitest';
import { addPoint, sceneStore, setScene } from '../../../renderer/scene/sceneStore.ts';
import type { Shape } from '../../../renderer/solve/protocol.ts';
import { clearEvaluation, markStale, takeAnswer } from '../../../renderer/store/evaluation.ts';

/** A shape as far as it matters here: which design it is of. */
const shown = (designHash: string) => {
  takeAnswer({ kind: 'shape', run: 1, shape: { revisionId: 'A', designHash } as Shape });
};
const count = () => sceneStore.getState().points.length;

beforeEach(() => {
  shown('one');
  setScene({ measuring: true, points: [] });
  addPoint({ at: [0, 5, 0], on: 'edge' });
  addPoint({ at: [10, 5, 0], on: 'corner' });
});

test('measured places stay while the same design is shown, worked out anew or waited for', () => {
  markStale();
  shown('one');
  expect(count()).toBe(2);
});

test('they go with the design that they were measured on; measuring goes on', () => {
  shown('two');
  expect(count()).toBe(0);
  expect(sceneStore.getState().measuring).toBe(true);
  addPoint({ at: [0, 0, 0], on: 'surface' });
  clearEvaluation();
  expect(count()).toBe(0);
});
