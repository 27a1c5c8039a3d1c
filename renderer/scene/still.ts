/** Whether the person asked the system for less motion. */
export const prefersStill = (): boolean => globalThis.matchMedia?.('(prefers-reduced-motion: reduce)').matches ?? false;
