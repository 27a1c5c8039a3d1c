/** Sentences about what just happened. */

import { setView } from './store/view.ts';

/** Shows a sentence about what just happened: good news leaves by itself, bad news stays until it is closed. */
export const announce = (kind: 'good' | 'bad', sentence: string): void => setView({ notice: { kind, text: sentence } });
