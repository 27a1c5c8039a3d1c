/** Where the tour stops: what is shown, and beside which part of the window. */

import type { tourText } from '../strings/tour.ts';

/** One stop. */
export interface Stop {
  readonly id: keyof typeof tourText.stops;
  /** the part of the window it speaks of; null for the window as a whole */
  readonly target: string | null;
}

/** The stops in order. */
export const stops: readonly Stop[] = [
  { id: 'welcome', target: null },
  { id: 'describe', target: '.pane.describe' },
  { id: 'see', target: '.pane.see .scene-box, .pane.see .no-view' },
  { id: 'along', target: '.pane.see .axial' },
  { id: 'results', target: '.pane.results .verdict' },
  { id: 'findings', target: '.pane.results .findings' },
  { id: 'revisions', target: '.deciding' },
];
