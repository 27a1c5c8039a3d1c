/** What the print side rests on, in words. */

import type { Basis } from '../prediction/basisType.ts';
import { printTopicBases } from './topicBases.ts';

const topics = Object.values(printTopicBases);
const once = (texts: readonly string[]): string[] => [...new Set(texts)];

/** Basis of the whole print side: that of all its topics, each sentence once. */
export const printSideBasis: Omit<Basis, 'doubt'> = {
  model: topics.map(({ model }) => model).join('; '),
  assumptions: once(topics.flatMap(({ assumptions }) => assumptions)),
  source: once(topics.flatMap(({ source }) => source.split('; '))).join('; '),
  range: once(topics.map(({ range }) => range)).join(' '),
};
