/** Counts what may happen only so often within a while, such as starting a broken page again. */

/** Tells how often something may still happen. */
export interface Budget {
  /** Takes one; false where all of them were taken within the while. */
  spend(): boolean;
  /** Forgets what was taken. */
  refill(): void;
}

/**
 * A budget of its own.
 * @param most how many may be taken within the while
 * @param withinMs length of the while, ms
 * @param now a clock, ms
 */
export function createBudget(most: number, withinMs: number, now: () => number = Date.now): Budget {
  let taken: readonly number[] = [];
  return {
    spend() {
      const time = now();
      taken = taken.filter((at) => time - at < withinMs);
      if (taken.length >= most) return false;
      taken = [...taken, time];
      return true;
    },
    refill() {
      taken = [];
    },
  };
}
