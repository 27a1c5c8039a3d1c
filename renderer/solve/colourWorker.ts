/** The worker of colour studies. */

import { config } from 'zod';
import { answering } from './answering.ts';
import { type ColourAsk, colourAnswers } from './colourJob.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

self.onmessage = answering<ColourAsk>(colourAnswers, (answer) => self.postMessage(answer));
