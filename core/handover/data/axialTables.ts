/** Tables along the screw and over its speed. */

import type { Prediction } from '../../prediction/types.ts';
import { capacityNames } from '../../present/groups.ts';
import { type Column, cellIn, cellOf, columnTable, type DataTable } from './table.ts';

/** Melt, walls and granules at every station. */
export function alongScrew({ stations, axial }: Prediction): DataTable {
  const z: Column = { label: 'Along the screw', unit: 'mm', values: stations.z };
  return columnTable('along-screw', 'Along the screw', [
    z,
    { label: 'Pressure', unit: 'MPa', values: axial.pressure },
    { label: 'Barrel wall', unit: '°C', values: axial.wallTemperature },
    { label: 'Screw core', unit: '°C', values: axial.screwTemperature },
    { label: 'Granules and melt', unit: '°C', values: axial.meltTemperature },
    { label: 'Granules', unit: '°C', values: axial.solidTemperature },
    { label: 'Molten share', unit: '%', values: axial.moltenShare },
    { label: 'Solid bed over channel width', unit: '%', values: axial.bed },
    { label: 'Melt film', unit: 'mm', values: axial.film },
    { label: 'Filled with melt', unit: '%', values: axial.fill },
    { label: 'Filled', unit: '%', values: axial.filling },
    { label: 'Shear rate', unit: '1/s', values: axial.shearRate },
    { label: 'Viscosity', unit: 'Pa·s', values: axial.viscosity },
  ]);
}

/** The channel's shape at every station. */
export function geometryTable({ stations: s }: Prediction): DataTable {
  return columnTable('geometry', 'Geometry along the screw', [
    { label: 'Along the screw', unit: 'mm', values: s.z },
    { label: 'Section', unit: '', values: Array.from(s.section, (index) => index + 1) },
    { label: 'Flighted', unit: '', values: s.flighted },
    { label: 'Root radius', unit: 'mm', values: s.rootRadius },
    { label: 'Barrel radius', unit: 'mm', values: s.barrelRadius },
    { label: 'Depth', unit: 'mm', values: s.depth },
    { label: 'Lead', unit: 'mm', values: s.lead },
    { label: 'Starts', unit: '', values: s.starts },
    { label: 'Land, axial', unit: 'mm', values: s.flightWidth },
    { label: 'Flank', unit: '°', values: s.flankAngle },
    { label: 'Root fillet', unit: 'mm', values: s.rootFillet },
    { label: 'Helix angle at root', unit: '°', values: s.helixRoot },
    { label: 'Helix angle, mean', unit: '°', values: s.helixMean },
    { label: 'Helix angle at barrel', unit: '°', values: s.helixBarrel },
    { label: 'Channel width at barrel', unit: 'mm', values: s.widthBarrel },
    { label: 'Channel width, mean', unit: 'mm', values: s.widthMean },
    { label: 'Free area', unit: 'mm²', values: s.freeArea },
    { label: 'Helical length from 0', unit: 'mm', values: s.helicalLength },
    { label: 'Free volume from 0', unit: 'mm³', values: s.freeVolume },
    { label: 'Wetted area from 0', unit: 'mm²', values: s.wettedArea },
  ]);
}

/** Output, its bounds and loads over screw speed. */
export function overSpeed({ curve }: Prediction): DataTable {
  const plain = columnTable('over-speed', 'Over screw speed', [
    { label: 'Screw speed', unit: 'rpm', values: curve.screwSpeed },
    { label: 'Output', unit: 'mm³/s', values: curve.volumeFlow },
    { label: 'Pumping alone', unit: 'mm³/s', values: curve.pumping },
    { label: 'Feed alone', unit: 'mm³/s', values: curve.feed },
    { label: 'Melting alone', unit: 'mm³/s', values: curve.melting },
    { label: 'Heaters alone', unit: 'mm³/s', values: curve.heater },
    { label: 'Torque alone', unit: 'mm³/s', values: curve.torqueBound },
    { label: 'Head pressure', unit: 'MPa', values: curve.headPressure },
    { label: 'Torque', unit: 'N·m', values: curve.torque },
    { label: 'Torque available', unit: 'N·m', values: curve.torqueAvailable },
    { label: 'Works', unit: '', values: curve.works },
  ]);
  return {
    ...plain,
    columns: [...plain.columns, { label: 'Limited by', unit: '' }],
    rows: plain.rows.map((row, i) => [...row, capacityNames[curve.limit[i]] ?? '']),
  };
}

/** Share that has left by a time, of the whole path and of its parts. */
export function residenceTable({ residence }: Prediction): DataTable {
  const curves = [
    { part: 'whole path', time: residence.time, cumulative: residence.cumulative },
    ...(residence.partCurves ?? []),
  ];
  return {
    id: 'residence',
    title: 'Residence distribution',
    columns: [
      { label: 'Part', unit: '' },
      { label: 'Time', unit: 's' },
      { label: 'Share that has left', unit: '%' },
    ],
    rows: curves.flatMap(({ part, time, cumulative }) =>
      Array.from(time, (t, i) => [part, cellOf(t), cellIn(cumulative[i], '%')]),
    ),
  };
}
