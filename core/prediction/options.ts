/** What a caller may choose about a run. */

/** What steers the accuracy and the extent of a run. */
export interface PredictionOptions {
  /** stations per turn of lead */
  readonly stationsPerTurn: number;
  /** points of the output curve; 0 = none */
  readonly curvePoints: number;
  /** formulas answer at once; solved fields take seconds the first time and replace them */
  readonly fields: 'formula' | 'solved';
  /** step the warming-up in time as well; some tens of milliseconds */
  readonly warmUp: boolean;
}
