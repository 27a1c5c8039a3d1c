/** What each result rests on, in words; one entry per stage. */

import type { Basis } from './types.ts';

/** A basis without its doubt, which depends on the case. */
export type BasisText = Omit<Basis, 'doubt'>;

/** Adds the doubts of the case, joined to one text, or null where there is none. */
export const withDoubt = (text: BasisText, doubts: readonly (string | null | false)[] = []): Basis => {
  const said = doubts.filter((doubt): doubt is string => typeof doubt === 'string' && doubt !== '');
  return { ...text, doubt: said.length > 0 ? said.join(' ') : null };
};

/** Screw channel, head and their balance. */
export const pumpingBasis: BasisText = {
  model: 'Unrolled channel with coupled down- and cross-channel flow, balanced against the head',
  assumptions: [
    'The melt does not slip and has no memory; inertia is nothing.',
    'The channel is unrolled to the flat; drag is taken at the barrel, pressure flow at mean depth.',
    'Side walls enter through the width factors of a rectangular section, adapted to the melt’s local power-law index.',
    'Viscosity is that of the local mean temperature and pressure.',
    'Leakage is drag and pressure flow over the land, with the viscosity at the land’s shear rate.',
  ],
  source: 'Rowell & Finlayson 1928; Griffith 1962; Tadmor & Klein 1970',
  range:
    'Depth up to 0.6 of the bore radius, taper under about 1 in 10. Against solved sections: unrolled within 3 % to H/W = 0.3; helical within 4 % for Newtonian melt, 12 % for index 0.5.',
};

/** Feed capacity. */
export const feedBasis: BasisText = {
  model: 'Free volume per turn, filled as a plug slides',
  assumptions: [
    'The hopper keeps the opening covered as far as its outlet discharges by gravity; arching is judged apart.',
    'Granules move as a packed plug with constant friction, without pressure build-up.',
    'The plug carries at least 30 % of the free volume, like a trough conveyor, and at most all of it.',
  ],
  source: 'Darnell & Mol 1956; conveyor guides after ANSI/CEMA 350; outlet: Beverloo, Leniger & van de Velde 1961',
  range: 'Granules smaller than the channel; friction is rarely known within 30 %.',
};

/** Starved feeding. */
export const starvedBasis: BasisText = {
  model: 'Metered feed',
  assumptions: ['What the feeder meters arrives and leaves.'],
  source: 'Mass balance',
  range: 'Any steady feed below the feed capacity.',
};

/** Grain against channel. */
export const grainBasis: BasisText = {
  model: 'Hopper outlet, feed opening, channel depth and flight gap against the 90 % grain',
  assumptions: [
    'A grain enters if every passage down to the channel under the opening is at least as wide as the grain.',
  ],
  source: 'common practice: depth at least 1.0, better 1.3 to 1.5 grains',
  range: 'Hard granules; soft or flat flakes may fold in.',
};

/** Torque as a limit of output. */
export const torqueLimitBasis: BasisText = {
  model: 'Motor torque at speed through the gear',
  assumptions: ['Granules, film, melt, flight land and tip load the screw; the motor gives its usable share.'],
  source: 'Pull-out curve of the motor, gear ratio, efficiency and usable share',
  range: 'Reserve scales output with torque, right for small changes.',
};

/** Motor speed as a limit of output. */
export const speedLimitBasis: BasisText = {
  model: 'Highest motor speed through the gear',
  assumptions: ['Output grows in proportion to speed.'],
  source: 'Last point of the motor’s curve',
  range: 'Proportional where pumping or feeding limits.',
};

/** Heat demand. */
export const heatBasis: BasisText = {
  model: 'Steady heat balance of barrel, nozzle, screw core and melt along the axis, with thermostats of limited watts',
  assumptions: [
    'Wall and screw core have one temperature across; they conduct along the axis by finite volumes of second order.',
    'A thermostat holds the mean of the wall under its heater as far as its watts reach, and can only switch off above it.',
    'Outside: natural convection round a level cylinder and radiation at emissivity 0.8 (0.2 to 0.95), at the set temperature of each zone; 2 W/(m² K) insulated, 400 under a cooling jacket; heater contact 3000.',
    'The nozzle is of the barrel’s metal, screwed in tight: 10 000 W/(m² K) on its wall section; melt in it warms as in a pipe, Nu = 3.66.',
    'Granulate takes up heat as its melting model says, melt as a slab heated from both faces; wall and screw core each pay for their own.',
    'Friction of granules on the barrel makes heat too; it is left out here.',
    'Constant heat capacities on either side of melting, heat of fusion at melting; dissipation heats the melt where it is made.',
    'The output over speed takes the walls of each speed; what each heater can carry is found at the set speed.',
  ],
  source:
    'Fin equation with heat sinks (Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, section 3.6); pipe flow: Graetz 1883; still air: Churchill & Chu 1975 (from memory); energy balance; coefficients common practice',
  range:
    'Steady running of small barrels (Biot number of the bare wall below 0.1); warming up wants about twice the watts.',
};

/** Residence. */
export const residenceBasis: BasisText = {
  model: 'Closed form of the wide channel, joined with laminar pipe flow for tip and nozzle',
  assumptions: [
    'Times count from where the granules are molten.',
    'Channel: Newtonian, isothermal, wide, no leakage; scaled to the true melt volume over flow.',
    'Tip and nozzle together: laminar pipe flow of the local power-law index.',
    'Melt mixes between channel and tip; the mean is exactly volume over flow.',
  ],
  source: 'Pinto & Tadmor 1970; Danckwerts 1953; Levenspiel 1999',
  range: 'Mean and t50 hold for most screws; t99 is a lower bound where corners or ledges hold melt.',
};

/** Dead volume. */
export const deadBasis: BasisText = {
  model: 'Slow share of the wide channel’s closed form',
  assumptions: [
    'Covers the screw channel only; corners, fillets, screw tip and nozzle are not covered by this version.',
  ],
  source: 'Pinto & Tadmor 1970',
  range: 'A lower bound: sharp corners and ledges add to it.',
};
