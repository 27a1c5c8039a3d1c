/** Thin shell around the bench's tasks in a worker: faults become data. */

import { config } from 'zod';
import { faultOf } from '../../solve/answering.ts';
import type { BenchAnswer, BenchRequest } from './protocol.ts';
import { perform } from './tasks.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

const answer = (message: BenchAnswer): void => self.postMessage(message);

self.onmessage = (event: MessageEvent<BenchRequest>) => {
  try {
    answer(perform(event.data, (done, of) => answer({ kind: 'progress', done, of })));
  } catch (fault) {
    answer(faultOf(fault));
  }
};
