/** The verdict on each topic of the print side in two or three words. */

import type { PrintMatch, PrintTopicId } from '../../core/index.ts';
import { formatNumber } from '../look.ts';
import { text } from '../strings.ts';

const words = text.printSide;

/** How a topic stands and what is said of it. */
export interface Chip {
  readonly tone: 'good' | 'warn' | 'bad' | 'unknown';
  readonly said: string;
}

const strandTones = { strand: 'good', sags: 'warn', drips: 'bad' } as const;
const crackTones = { low: 'good', risky: 'warn', exceeds: 'bad' } as const;

/** The chip of a topic; null where there is nothing to judge. `flows`: something comes out. */
export function chipOf(print: PrintMatch, topic: PrintTopicId, flows: boolean): Chip | null {
  switch (topic) {
    case 'demand': {
      const tone = print.margin >= 1 ? 'good' : 'bad';
      return { tone, said: `${words.margin[tone]}, ${formatNumber(print.margin, 2)}×` };
    }
    case 'line': {
      const fits = print.line.width === 'good' && print.line.height === 'good';
      return { tone: fits ? 'good' : 'warn', said: fits ? words.line.good : words.line.bad };
    }
    case 'strand': {
      const { verdict } = print.strand;
      if (!flows) return null;
      return { tone: verdict ? strandTones[verdict] : 'unknown', said: words.strand[verdict ?? 'unknown'] };
    }
    case 'cooling': {
      const { verdict } = print.crack;
      return { tone: verdict ? crackTones[verdict] : 'unknown', said: words.crack[verdict ?? 'unknown'] };
    }
    default:
      return null;
  }
}
