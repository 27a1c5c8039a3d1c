/** A worker that runs samples of a study of doubt. */

import { config } from 'zod';
import { answeringOnce } from './answering.ts';
import { doubtDesk } from './doubtDesk.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

self.onmessage = answeringOnce(doubtDesk(), (answer) => self.postMessage(answer));
