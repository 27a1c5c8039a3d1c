/** Tables of things: figures, capacities, dead spots, findings, heaters, nozzle pieces, curves, comparison. */

import { comparePredictions } from '../../compare/compare.ts';
import { comparedQuantities } from '../../compare/quantities.ts';
import type { Prediction } from '../../prediction/types.ts';
import { capacityNames } from '../../present/groups.ts';
import { displayedValue } from '../../present/shown.ts';
import type { Presentation } from '../../present/types.ts';
import { type Cell, cellIn, cellOf, type DataTable } from './table.ts';

/** A table from columns as `label` or `label|unit`, and its rows. */
function listTable(
  id: string,
  title: string,
  columns: readonly string[],
  rows: readonly (readonly Cell[])[],
): DataTable {
  const split = columns.map((column) => column.split('|'));
  return { id, title, columns: split.map(([label, unit = '']) => ({ label, unit })), rows };
}

/** Every figure of the presentation. */
export const figuresTable = ({ groups }: Presentation): DataTable =>
  listTable(
    'figures',
    'Figures',
    ['Group', 'Figure', 'Value', 'Unit', 'Text', 'Model', 'Doubtful here'],
    groups.flatMap(({ title, rows }) =>
      rows.map(({ label, value, unit, text, basis }) => [
        ...[title, label, cellOf(value), unit, text],
        ...[basis?.model ?? '', basis?.doubt ?? ''],
      ]),
    ),
  );

/** Every curve that the window draws, point by point. */
export const curvesTable = ({ series }: Presentation): DataTable =>
  listTable(
    'curves',
    'Curves as drawn',
    ['Plot', 'Curve', 'x is', 'x', 'Unit of x', 'y is', 'y', 'Unit of y'],
    series.flatMap(({ title, name, xLabel, xUnit, yLabel, yUnit, x, y }) =>
      Array.from(x, (value, i) => [title, name, xLabel, cellOf(value), xUnit, yLabel, cellOf(y[i]), yUnit]),
    ),
  );

/** What could hold the output down. */
export const capacitiesTable = ({ capacities }: Prediction): DataTable =>
  listTable(
    'capacities',
    'Capacities',
    ['Capacity', 'Alone allows|mm³/s', 'Over the output|×', 'Model'],
    capacities.map(({ kind, volumeFlow, reserve, basis }) => [
      ...[capacityNames[kind], cellIn(volumeFlow, 'mm³/s'), cellOf(reserve), basis.model],
    ]),
  );

/** Where melt lingers. */
export const deadSpotsTable = ({ dead }: Prediction): DataTable =>
  listTable(
    'dead-spots',
    'Dead spots',
    [
      ...['Part', 'Where', 'Along the axis|mm', 'from|mm', 'to|mm', 'Radius|mm', 'Volume|mm³', 'Mean age|s'],
      ...['Cause', 'Remedy', 'Colour difference|ΔE00', 'Colour'],
    ],
    dead.spots.map((spot) => [
      ...[spot.part, spot.where, cellIn(spot.z, 'mm'), cellIn(spot.zFrom, 'mm'), cellIn(spot.zTo, 'mm')],
      ...[cellIn(spot.r, 'mm'), cellIn(spot.volume, 'mm³'), cellOf(spot.meanAge), spot.cause, spot.remedy],
      ...[cellOf(spot.dE00), spot.srgb ?? ''],
    ]),
  );

/** What is doubtful about the design. */
export const findingsTable = ({ findings }: Prediction): DataTable =>
  listTable(
    'findings',
    'Findings',
    [
      'Weight',
      'Code',
      'Where',
      'Seen',
      'Why it matters',
      'What to change',
      'Value',
      'Limit',
      'Unit',
      'Along the axis|mm',
    ],
    findings.map((each) => {
      const value = displayedValue(each.value, each.unit);
      return [
        ...[each.severity, each.code, each.where, each.saw, each.why, each.change],
        ...[value.value, displayedValue(each.limit, each.unit).value, value.unit, cellIn(each.z, 'mm')],
      ];
    }),
  );

/** Heaters with their watts. */
export const heatersTable = ({ heat }: Prediction): DataTable =>
  listTable(
    'heaters',
    'Heaters',
    ['Heater', 'Part', 'Set|°C', 'Reached|°C', 'Given|W', 'Needed|W', 'Installed|W', 'Duty'],
    heat.zones.map((zone) => [
      ...[zone.name, zone.part, cellIn(zone.setTemperature, '°C'), cellIn(zone.reached, '°C')],
      ...[cellOf(zone.power), cellOf(zone.needed), cellOf(zone.maxPower), zone.duty],
    ]),
  );

/** Pressure over the pieces of the nozzle. */
export const nozzleTable = ({ nozzle }: Prediction): DataTable =>
  listTable(
    'nozzle',
    'Nozzle',
    ['Piece', 'Pressure drop|MPa', 'Wall shear rate|1/s', 'Temperature|°C'],
    nozzle.map((drop) => [
      ...[drop.name, cellIn(drop.pressureDrop, 'MPa'), cellOf(drop.wallShearRate), cellIn(drop.temperature, '°C')],
    ]),
  );

/** Revisions side by side; values in the unit of their row. */
export function comparisonTable(predictions: readonly Prediction[]): DataTable {
  const { revisions, rows } = comparePredictions(predictions);
  return listTable(
    'comparison',
    'Comparison of revisions',
    ['Quantity', 'Unit', ...revisions.map(({ id }) => `Revision ${id}`)],
    rows.map((row) => {
      const unit = comparedQuantities.find(({ id }) => id === row.id)?.unit ?? '';
      const shown = row.values.map(({ value }) => (unit === '' ? cellOf(value) : cellIn(value, unit)));
      return [row.label, unit, ...shown];
    }),
  );
}
