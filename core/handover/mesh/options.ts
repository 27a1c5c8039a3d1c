/** Options that the mesh modules share. */

import type { HandoverOption } from '../types.ts';

const part: HandoverOption = {
  id: 'part',
  label: 'Part',
  help: 'Which body to write.',
  kind: 'choice',
  choices: [
    { id: 'screw', label: 'Screw' },
    { id: 'barrel', label: 'Barrel' },
    { id: 'nozzle', label: 'Nozzle' },
    { id: 'all', label: 'All three' },
  ],
  start: 'screw',
};

const length = (id: string, label: string, help: string, most: number, start = 0): HandoverOption => {
  return { id, label, help, kind: 'number', unit: 'mm', least: 0, most, start };
};

/** Part and fineness. */
const basic: readonly HandoverOption[] = [
  part,
  {
    id: 'tolerance',
    label: 'Deviation allowed',
    help: 'How far the triangles may lie from the true surface. Half of it takes twice the triangles.',
    kind: 'number',
    unit: 'mm',
    least: 0.005,
    most: 0.5,
    start: 0.02,
  },
];

/** Shapes for making: with tools. */
const machining: readonly HandoverOption[] = [
  length(
    'runout',
    'Run-out of flights',
    'Flights fade to the root over this length where they end, as a tool leaves them. 0 = none.',
    50,
  ),
  length(
    'reliefWidth',
    'Relief groove, width',
    'A ring cut where flights end against shank or a plain stretch, so that a tool can leave. 0 = none.',
    20,
  ),
  length('reliefDepth', 'Relief groove, depth', 'Below the root, per side. It weakens the screw there.', 5, 0.5),
];

/** Shapes for making: in layers. */
const printing: readonly HandoverOption[] = [
  {
    id: 'onBed',
    label: 'Stand on the bed',
    help: 'Each body is laid so that its lowest point is at height 0, halves on their cut face.',
    kind: 'flag',
    start: false,
  },
  length('minWall', 'Least wall', 'Walls, flights and roots thinner than this are told. 0 = not looked for.', 20),
  length('flat', 'Flat on the shank, depth', 'A flat along the shank, to lie on and to drive by. 0 = none.', 10),
  {
    id: 'split',
    label: 'Split',
    help: 'Cuts bodies in two with holes for alignment pins.',
    kind: 'choice',
    choices: [
      { id: 'none', label: 'Whole' },
      { id: 'lengthwise', label: 'In two halves along the axis' },
      { id: 'across', label: 'Across the axis' },
    ],
    start: 'none',
  },
  { ...length('splitAt', 'Split at', 'Place along the axis, from the rear of the bore.', 3000, 60), least: -500 },
  length('pinDiameter', 'Pin holes, diameter', 'Holes for two alignment pins over the cut. 0 = none.', 20, 2),
  length('pinDepth', 'Pin holes, depth', 'Into each side of the cut.', 50, 4),
] as readonly HandoverOption[];

/** All, in the order of the form. */
export const meshOptions: readonly HandoverOption[] = [...basic, ...machining, ...printing];
