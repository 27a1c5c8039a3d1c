/** When a run that solves fields and is no longer wanted is ended, and when it is let finish. */

import type { Patience } from './client.ts';
import type { Hold } from './hold.ts';

/** Every run gets this long: a few such runs end at once, because all fields are known already. ms. */
const grace = 300;

/** A run with less than this left is let finish: ending its worker would lose every field solved so far. ms. */
const worthWaiting = 1200;

/** Time left by the share done, ms. */
const timeLeft = (sinceMs: number, done: number): number =>
  done > 0 ? (sinceMs * (1 - done)) / done : Number.POSITIVE_INFINITY;

/** The rule of the worker that solves fields, for the time that it ran. */
export const fieldsPatience: Patience = ({ sinceMs, done }) => {
  if (sinceMs < grace) return grace - sinceMs;
  const left = timeLeft(sinceMs, done);
  return left < worthWaiting ? Math.max(40, left) : 0;
};

/** How soon to look again at a run that is held, ms. */
const lookAgain = 100;

/** The same for a worker that may be held: the time it stands still counts for nothing. */
export const heldPatience =
  (hold: Pick<Hold, 'held' | 'heldMs'>): Patience =>
  ({ sinceMs, done }) => {
    const spare = fieldsPatience({ sinceMs: sinceMs - hold.heldMs, done });
    return spare > 0 && hold.held ? Math.max(lookAgain, spare) : spare;
  };
