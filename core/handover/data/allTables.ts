/** Every table of a revision, and the comparison where there are several. */

import type { Prediction } from '../../prediction/types.ts';
import type { HandoverSource, HandoverSubject } from '../types.ts';
import { alongScrew, geometryTable, overSpeed, residenceTable } from './axialTables.ts';
import {
  capacitiesTable,
  comparisonTable,
  curvesTable,
  deadSpotsTable,
  figuresTable,
  findingsTable,
  heatersTable,
  nozzleTable,
} from './listTables.ts';
import type { DataTable } from './table.ts';

/** Ids and titles of the tables of one revision, in order. */
export const tableChoices = [
  { id: 'figures', label: 'Figures' },
  { id: 'along-screw', label: 'Along the screw' },
  { id: 'over-speed', label: 'Over screw speed' },
  { id: 'residence', label: 'Residence distribution' },
  { id: 'dead-spots', label: 'Dead spots' },
  { id: 'findings', label: 'Findings' },
  { id: 'capacities', label: 'Capacities' },
  { id: 'heaters', label: 'Heaters' },
  { id: 'nozzle', label: 'Nozzle' },
  { id: 'geometry', label: 'Geometry along the screw' },
  { id: 'curves', label: 'Curves as drawn' },
] as const;

/** Tables of one revision, in the order of `tableChoices`. Needs a prediction. */
export function tablesOf({ prediction, presentation }: HandoverSubject): readonly DataTable[] {
  if (!prediction || !presentation) return [];
  return [
    figuresTable(presentation),
    alongScrew(prediction),
    overSpeed(prediction),
    residenceTable(prediction),
    deadSpotsTable(prediction),
    findingsTable(prediction),
    capacitiesTable(prediction),
    heatersTable(prediction),
    nozzleTable(prediction),
    geometryTable(prediction),
    curvesTable(presentation),
  ];
}

/** The comparison of all revisions; none of a single one. */
export function comparisonOf({ subjects }: HandoverSource): readonly DataTable[] {
  const predictions = subjects.flatMap(({ prediction }): Prediction[] => (prediction ? [prediction] : []));
  return predictions.length > 1 ? [comparisonTable(predictions)] : [];
}
