/** What is known of a material, prediction by prediction. */

/** A prediction that rests on material values. */
export type PredictionTopic =
  | 'feeding'
  | 'melting'
  | 'pumping'
  | 'residence'
  | 'colour'
  | 'propertyLoss'
  | 'cracking'
  | 'strand';

/** How well the values behind one prediction are known. */
export interface TopicCompleteness {
  readonly topic: PredictionTopic;
  /** missing: cannot be predicted; doubtful: rests on values that nobody saw or measured; known: all seen or measured */
  readonly state: 'known' | 'doubtful' | 'missing';
  /** names of values without which it cannot be predicted, as a reader knows them */
  readonly missing: readonly string[];
  /** names of values from memory, common practice, estimate or invention, and of optional ones that are not given */
  readonly doubtful: readonly string[];
}
