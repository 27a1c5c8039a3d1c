/** Thin shell around core in a worker: granules for the picture. */

import { config } from 'zod';
import { buildStations, grainPicture, validateDesign } from '../../core/index.ts';
import type { GrainsAnswer, GrainsAsk } from './grainsProtocol.ts';
import type { JobEnd } from './job.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

const answer = (message: GrainsAnswer | JobEnd): void => self.postMessage(message);

self.onmessage = ({ data }: MessageEvent<GrainsAsk>) => {
  try {
    const design = validateDesign(data.project, data.revisionId);
    if (design.ok) answer({ kind: 'grains', picture: grainPicture(design.value, buildStations(design.value, 48)) });
    answer({ kind: 'done' });
  } catch (fault) {
    answer({ kind: 'fault', message: fault instanceof Error ? fault.message : String(fault) });
  }
};
