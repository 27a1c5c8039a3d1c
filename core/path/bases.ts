/** What solved results rest on, in words. */

import type { BasisText } from '../prediction/bases.ts';

/** Screw channel, head and their balance, from solved fields. */
export const solvedPumpingBasis: BasisText = {
  model: 'Unrolled channel and head formulas, corrected to carry what solved fields carry',
  assumptions: [
    'The melt does not slip and has no memory; inertia is nothing.',
    'Fields: helical channel with its fillets and flanks, all velocity components in one viscosity; tip and nozzle turned about the axis, with the tip’s swirl.',
    'Each cross-section is isothermal at its mean temperature; the head at the nozzle’s set temperature.',
    'Solved points lie on a grid of shape, law and load; between them factors are linear.',
    'Leakage is drag and pressure flow over the land, with the viscosity at the land’s shear rate.',
    'Barrel power leaves out a strip as wide as the clearance at each flank, where the stress has no limit.',
    'The tip’s torque is the formula’s, and the curve over speed keeps the factors of the working point.',
  ],
  source: 'Griffith 1962; Rowell & Finlayson 1928; fields by finite elements, checked against independent solutions',
  range:
    'Any depth and flank; within 1 % of helical solutions for Newtonian melt without clearance, 2 % for index 0.5.',
};

/** Residence from solved fields. */
export const solvedResidenceBasis: BasisText = {
  model: 'Orbits of the solved channel flow, joined with the solved age at the orifice',
  assumptions: [
    'Times count from where the granules are molten.',
    'A streamline keeps its share of the flow along the channel; plain stretches count as slits.',
    'Melt that makes no way forward is exchanged so slowly that only the last millionth of the flow tells of it.',
    'In tip and nozzle the age diffuses a little (Péclet number 1e5); melt mixes between channel and tip.',
    'Where the channel runs partly filled, its melt is taken to circle as in a full one without pressure.',
    'The mean is exactly volume over flow; washing out to a purity takes as long as that share of the flow.',
  ],
  source: 'Danckwerts 1953; Pinto & Tadmor 1970 (orbits); Spalding 1958 (age)',
  range: 'Steady flow; times beyond t99 depend on how sharp the corners really are.',
};

/** Dead volume from solved fields. */
export const solvedDeadBasis: BasisText = {
  model: 'Old melt of the solved channel, tip and nozzle',
  assumptions: [
    'Channel: melt whose whole passage takes longer than three (five) times the mean; head: melt that has become as old.',
    'Spots: corners of the channel, and places of the head older than three times its own mean.',
    'A spot’s age counts from melting, at the temperature of its part.',
  ],
  source: 'Danckwerts 1953; Moffatt 1964 (corner eddies)',
  range: 'Smooth walls; burrs, weld seams and gaps that are not drawn are not seen.',
};
