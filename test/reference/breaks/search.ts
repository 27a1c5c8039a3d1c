/** Breaks that the checks of the search must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const searchBreaks: readonly Break[] = [
  {
    check: 'search.branin',
    file: 'core/search/steps.ts',
    from: '(at * step).toPrecision(10)',
    to: '(at * step).toPrecision(2)',
  },
  {
    check: 'search.hartmann',
    file: 'core/search/merit.ts',
    from: "(spec.objective.sense === 'most' ? -1 : 1)",
    to: "(spec.objective.sense === 'most' ? 1 : -1)",
  },
  {
    check: 'search.hartmannPlace',
    file: 'core/search/seek.ts',
    from: 'low + (at[i] ?? 0) * (high - low)',
    to: 'low + ((at[i] ?? 0) * (high - low)) / 2',
  },
  {
    check: 'search.problem24',
    file: 'core/search/merit.ts',
    from: "sense === 'atMost' ? value - bound : bound - value",
    to: "sense === 'atMost' ? bound - value : value - bound",
  },
  {
    check: 'search.problem35',
    file: 'core/search/merit.ts',
    from: 'closer(a.beyond, b.beyond) || closer(a.objective, b.objective)',
    to: 'closer(a.objective, b.objective)',
  },
  {
    check: 'search.preferredNumbers',
    file: 'core/search/sweep.ts',
    from: 'from * (to / from) ** share',
    to: 'from * (to * from) ** (share / 2)',
  },
  {
    check: 'search.makeableStep',
    file: 'core/search/steps.ts',
    from: 'Math.max(first, Math.round(value / step))',
    to: 'Math.max(first, Math.floor(value / step))',
  },
];
