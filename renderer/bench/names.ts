/** Names that the bench log shares with its words. */

import type { BenchField, FactorName } from '../../core/index.ts';

export type { BenchField, FactorName };

/** Fields of a trial as they are typed; the temperatures share one name. */
export type TrialFieldName =
  | 'date'
  | 'revisionId'
  | 'materialId'
  | 'lot'
  | 'screwSpeedRpm'
  | 'setTempsC'
  | 'seconds'
  | 'grams'
  | 'torqueNm'
  | 'currentA'
  | 'labL'
  | 'labA'
  | 'labB'
  | 'note'
  | 'excludedWhy';
