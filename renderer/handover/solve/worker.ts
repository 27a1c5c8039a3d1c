/** Writes hand-over files in a worker: project and options in, files out, faults as data. */

import { config } from 'zod';
import { faultOf } from '../../solve/answering.ts';
import { type HandoverHear, perform } from './desk.ts';
import type { HandoverAsk } from './protocol.ts';
import { workerTools } from './tools.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

const answer: HandoverHear = (message, buffers = []) => self.postMessage(message, { transfer: buffers });

self.onmessage = (event: MessageEvent<HandoverAsk>) => {
  perform(event.data, workerTools, answer).catch((fault: unknown) => {
    answer(faultOf(fault));
  });
};
