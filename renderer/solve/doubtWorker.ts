/** A worker that runs samples of a study of doubt. */

import { config } from 'zod';
import { doubtDesk } from './doubtDesk.ts';
import type { DoubtAsk } from './doubtProtocol.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

const desk = doubtDesk();

self.onmessage = (event: MessageEvent<DoubtAsk>) => {
  try {
    const answer = desk(event.data);
    if (answer) self.postMessage(answer);
  } catch (fault) {
    const message = fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault);
    self.postMessage({ kind: 'fault', message });
  }
};
