/** Every break, joined from the stages' files beside this one. */

import type { Break } from './types.ts';

const stages = import.meta.glob<Readonly<Record<string, readonly Break[]>>>(['./*.ts', '!./index.ts', '!./types.ts'], {
  eager: true,
});

/** All breaks, in the order of the files' names; a new stage's file is found by itself. */
export const breaks: readonly Break[] = Object.values(stages).flatMap((file) => Object.values(file).flat());
