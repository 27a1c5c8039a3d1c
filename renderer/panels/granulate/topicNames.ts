/** Predictions by their names. */

import type { PredictionTopic } from '../../../core/index.ts';
import { text } from '../../strings.ts';

/** The names of topics as they stand in a sentence. */
export const topicNames = (topics: readonly PredictionTopic[]): string =>
  topics.map((topic) => text.describe.granulate.topics[topic].toLowerCase()).join(', ');
