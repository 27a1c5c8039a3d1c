/** What the window asks of the worker that places granules for the picture, and what comes back. */

import type { GrainPicture, Project } from '../../core/index.ts';

/** Place the granules of this revision. */
export interface GrainsAsk {
  readonly project: Project;
  readonly revisionId: string;
}

/** The granules; nothing where the description is refused. */
export interface GrainsAnswer {
  readonly kind: 'grains';
  readonly picture: GrainPicture;
}
