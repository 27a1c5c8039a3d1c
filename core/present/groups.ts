/** Figures of a prediction in groups, in the order of deciding. */

import type { CapacityKind, Prediction } from '../prediction/types.ts';
import { numberRow, quantityRow, textRow } from './row.ts';
import type { PresentedGroup, PresentedRow } from './types.ts';

/** Names of the capacities. */
export const capacityNames: Readonly<Record<CapacityKind, string>> = {
  pumping: 'pumping against the nozzle',
  feed: 'feeding',
  starved: 'metered feed',
  torque: 'torque',
  motorSpeed: 'motor speed',
  heater: 'heater watts',
  melting: 'melting',
  grainFit: 'grain against channel',
};

type Group = (prediction: Prediction) => PresentedGroup;

const output: Group = ({ output: o, limit }) => ({
  id: 'output',
  title: 'Output',
  rows: [
    quantityRow(
      { id: 'volumeFlow', label: 'Melt output', help: 'Volume of melt that leaves per time.', basis: o.basis },
      o.volumeFlow,
      'mm³/s',
    ),
    quantityRow(
      { id: 'massFlow', label: 'Mass output', help: 'The same by weight, with the melt density.' },
      o.massFlow,
      'g/min',
    ),
    quantityRow(
      { id: 'screwSpeed', label: 'Screw speed', help: 'The set speed, or the fastest the drive can hold.' },
      o.screwSpeed,
      'rpm',
    ),
    textRow({ id: 'limit', label: 'Limited by', help: 'The least of all capacities.' }, capacityNames[limit]),
    quantityRow(
      { id: 'headPressure', label: 'Head pressure', help: 'Melt pressure at the end of the screw, above ambient.' },
      o.headPressure,
      'MPa',
    ),
    quantityRow(
      {
        id: 'leakFlow',
        label: 'Leak over the flight',
        help: 'Axial flow lost over the flight land at the last flight.',
      },
      o.leakFlow,
      'mm³/s',
    ),
    quantityRow(
      { id: 'filledLength', label: 'Filled length', help: 'Length of screw that is full of melt under pressure.' },
      o.filledLength,
      'mm',
    ),
  ],
});

const capacities: Group = (prediction) => ({
  id: 'capacities',
  title: 'What could limit the output',
  rows: prediction.capacities.map(({ kind, volumeFlow, basis }) =>
    quantityRow(
      { id: kind, label: capacityNames[kind], help: 'Melt flow that this alone would allow.', basis },
      volumeFlow,
      'mm³/s',
      3,
    ),
  ),
});

const geometry: Group = ({ geometry: g }) => ({
  id: 'geometry',
  title: 'Geometry',
  rows: [
    numberRow(
      {
        id: 'compressionRatio',
        label: 'Compression',
        help: 'Free volume per turn at the feed over that at the last flight.',
      },
      g.compressionRatio,
      '',
      3,
    ),
    quantityRow(
      {
        id: 'feedVolumePerTurn',
        label: 'Feed volume per turn',
        help: 'Free volume of one turn under the feed opening.',
      },
      g.feedVolumePerTurn,
      'cm³',
      3,
    ),
    quantityRow(
      { id: 'channelVolume', label: 'Channel volume', help: 'Free volume of the whole screw channel.' },
      g.channelVolume,
      'cm³',
      3,
    ),
    quantityRow(
      { id: 'headVolume', label: 'Tip and nozzle volume', help: 'Melt between the last flight and the orifice.' },
      g.tipVolume + g.nozzleVolume,
      'cm³',
      3,
    ),
    quantityRow(
      {
        id: 'tipGap',
        label: 'Gap ahead of the tip',
        help: 'From the foremost point to the first narrowing; negative inside a cone.',
      },
      g.tipGap,
      'mm',
      3,
    ),
    quantityRow(
      { id: 'leastRoot', label: 'Least root diameter', help: 'The thinnest place that carries torque.' },
      g.leastRootDiameter,
      'mm',
      3,
    ),
  ],
});

const residence: Group = ({ residence: r, dead }) => ({
  id: 'residence',
  title: 'Residence',
  rows: [
    quantityRow({ id: 'mean', label: 'Mean', help: 'Melt volume over flow.', basis: r.basis }, r.mean, 's', 3),
    quantityRow({ id: 'min', label: 'Shortest', help: 'The first melt that leaves.' }, r.min, 's', 3),
    quantityRow({ id: 't50', label: 'Half has left by', help: 'Median.' }, r.t50, 's', 3),
    quantityRow({ id: 't95', label: '95 % has left by', help: 'One part in twenty stays longer.' }, r.t95, 's', 3),
    quantityRow({ id: 't99', label: '99 % has left by', help: 'One part in a hundred stays longer.' }, r.t99, 's', 3),
    ...r.parts.map((part) =>
      quantityRow(
        { id: `mean-${part.part}`, label: `Mean in the ${part.part}`, help: 'Volume of the part over flow.' },
        part.mean,
        's',
        3,
      ),
    ),
    quantityRow(
      {
        id: 'over3',
        label: 'Volume older than 3 × mean',
        help: 'Share of the melt volume that lingers.',
        basis: dead.basis,
      },
      dead.fractionOver3,
      '%',
      2,
    ),
    quantityRow(
      { id: 'over5', label: 'Volume older than 5 × mean', help: 'Share of the melt volume that hardly moves.' },
      dead.fractionOver5,
      '%',
      2,
    ),
  ],
});

const colour: Group = ({ colour: c }) => ({
  id: 'colour',
  title: 'Colour',
  rows: [
    numberRow(
      {
        id: 'dE00Mean',
        label: 'Mean shift, dE00',
        help: 'Colour difference of the extrudate from the fresh granulate.',
        basis: c.basis,
      },
      c.dE00Mean,
      '',
      2,
    ),
    numberRow(
      { id: 'dE00Worst', label: 'Worst streak, dE00', help: 'The oldest hundredth of the extrudate.' },
      c.dE00Worst,
      '',
      2,
    ),
    textRow({ id: 'reason', label: 'Note', help: 'Why the colour cannot be said, where it cannot.' }, c.reason ?? ''),
  ],
});

const drive: Group = ({ drive: d }) => ({
  id: 'drive',
  title: 'Drive and strength',
  rows: [
    quantityRow(
      { id: 'torque', label: 'Torque', help: 'Torque of the melt on the screw.', basis: d.basis },
      d.torque,
      'N·m',
      3,
    ),
    quantityRow(
      { id: 'torqueUsable', label: 'Torque available', help: 'What the drive may give at this speed.' },
      d.torqueUsable,
      'N·m',
      3,
    ),
    quantityRow(
      {
        id: 'torqueClearance',
        label: 'of it over the flight land',
        help: 'Shear in the gap between flight and barrel.',
      },
      d.torqueClearance,
      'N·m',
      3,
    ),
    quantityRow({ id: 'power', label: 'Power at the screw', help: 'Torque times speed.' }, d.power, 'W', 3),
    quantityRow(
      { id: 'motorSpeed', label: 'Motor speed', help: 'Screw speed times gear ratio.' },
      d.motorSpeed,
      'rpm',
      3,
    ),
    quantityRow(
      { id: 'rootShear', label: 'Shear in the root', help: 'Torsional stress of the least root when running.' },
      d.rootShear,
      'MPa',
      3,
    ),
    quantityRow(
      {
        id: 'rootShearFull',
        label: 'with the motor’s full torque',
        help: 'The same when a jam takes all the motor has.',
      },
      d.rootShearFull,
      'MPa',
      3,
    ),
    quantityRow({ id: 'thrust', label: 'Thrust', help: 'Axial force on the bearing.' }, d.thrust, 'N', 3),
    quantityRow(
      {
        id: 'blockedPressure',
        label: 'Pressure when blocked',
        help: 'With the discharge closed at this speed, if the motor can hold it.',
      },
      d.blockedPressure,
      'MPa',
      3,
    ),
  ],
});

const heat: Group = ({ heat: h }) => ({
  id: 'heat',
  title: 'Heat',
  rows: [
    quantityRow(
      { id: 'product', label: 'Into the granulate', help: 'Warming and melting.', basis: h.basis },
      h.product,
      'W',
      3,
    ),
    quantityRow(
      { id: 'dissipation', label: 'From shear', help: 'Made by the screw in the melt.' },
      h.dissipation,
      'W',
      3,
    ),
    quantityRow({ id: 'loss', label: 'Losses', help: 'To the air and to the cold end.' }, h.loss, 'W', 3),
    quantityRow({ id: 'heater', label: 'Heaters must bring', help: 'Steady running.' }, h.heater, 'W', 3),
    quantityRow({ id: 'installed', label: 'Installed', help: 'Watts of all heaters.' }, h.installed, 'W', 3),
  ],
});

const print: Group = ({ print: p }) => ({
  id: 'print',
  title: 'Print',
  rows: [
    quantityRow(
      { id: 'demand', label: 'Asked while laying a line', help: 'Line section times print speed.', basis: p.basis },
      p.demand,
      'mm³/s',
    ),
    quantityRow(
      { id: 'meanDemand', label: 'Asked on average', help: 'Over travel and idle shares.' },
      p.meanDemand,
      'mm³/s',
    ),
    numberRow({ id: 'margin', label: 'Supply over demand', help: 'At least 1 is wanted.' }, p.margin, '×', 3),
    quantityRow(
      { id: 'highestSpeed', label: 'Fastest print', help: 'Print speed that uses all the output.' },
      p.highestSpeed,
      'mm/s',
      3,
    ),
    quantityRow(
      { id: 'speedForDemand', label: 'Screw speed for the demand', help: 'Where the output meets the demand.' },
      p.speedForDemand,
      'rpm',
      3,
    ),
    numberRow(
      { id: 'passesPerWall', label: 'Passes per wall', help: 'Lines side by side for the wall thickness.' },
      p.passesPerWall,
      '',
      3,
    ),
    numberRow(
      {
        id: 'stepsPerMm3',
        label: 'Motor steps per mm³',
        help: 'Microsteps per volume at this pressure; measure to calibrate.',
      },
      p.stepsPerVolume * 1e-9,
      'steps/mm³',
      5,
    ),
  ],
});

const nozzle: Group = ({ nozzle: drops }) => ({
  id: 'nozzle',
  title: 'Pressure from the screw’s end to the orifice',
  rows: drops.map(
    (drop, i): PresentedRow =>
      quantityRow(
        { id: `${i}-${drop.name}`, label: drop.name, help: 'Pressure lost in this piece.' },
        drop.pressureDrop,
        'MPa',
        3,
      ),
  ),
});

/** All groups of a prediction. */
export const groupsOf = (prediction: Prediction): PresentedGroup[] =>
  [output, capacities, print, residence, colour, drive, heat, nozzle, geometry].map((group) => group(prediction));
