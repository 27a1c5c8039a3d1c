/** What the results about granules, melting, cold end and warming up rest on. */

import type { BasisText } from './bases.ts';

/** Granules between opening and melt. */
export const solidsBasis: BasisText = {
  model: 'Packed plug that slides on barrel, root and flanks',
  assumptions: [
    'Bulk density is constant and pressure alike in all directions; friction is Coulomb’s.',
    'A flooded plug starts under the hopper’s pressure (bin theory); a starved one runs loose until it backs up from the melt.',
    'Pressure grows exponentially along the plug and is capped where granules yield at the wall.',
    'Granules do not roll; a few large granules in a small channel do, and carry less.',
  ],
  source: 'Darnell & Mol 1956 in the arrangement of Tadmor & Klein 1970 (from memory); hopper: Janssen 1895',
  range:
    'Tells whether a plug holds and what it costs in torque. Friction is rarely known within 30 %, and pressure follows it by powers of ten.',
};

/** Melting along the screw. */
export const meltingReportBasis: BasisText = {
  model: 'Packed bed with a dragged melt film where granules lie in layers, conduction elsewhere',
  assumptions: [
    'Film: the barrel drags melt off the bed, which stays packed; relative speed of barrel and bed, shear heat with the local power-law index, heat carried by the film.',
    'Conduction: granules are heated from barrel and root, packed ones by their share of solid, and at most as fast as heat enters a single granule.',
    'A film is taken where the channel is at least 1.5 median granules deep, full of granules, the wall is above melting and melt does not sink into the bed faster than it forms.',
    'Melting ends where nothing solid is left of the mean; single granules may pass it.',
  ],
  source: 'Tadmor & Klein 1970; conduction: slab, first mode, and sphere series (Carslaw & Jaeger 1959)',
  range: 'The two models bracket small screws; where they differ much, trust neither end alone.',
};

/** Heat creep into the throat. */
export const coldEndBasis: BasisText = {
  model: 'Steady heat balance of barrel, screw core and granules, running and standing hot',
  assumptions: [
    'Running: walls and granules of the working point. Standing: heaters on, screw stopped until nothing changes any more.',
    'Granules stick where wall or core beside them are above softening.',
  ],
  source: 'Fin equation with heat sinks (Incropera & DeWitt, section 3.6), as for the heat balance',
  range: 'Within about 10 K, by the doubt about heat lost to the air and taken by cooling.',
};

/** Warming up from cold. */
export const warmUpBasis: BasisText = {
  model: 'The heat balance stepped in time, screw standing',
  assumptions: [
    'Thermostats give full watts below the set temperature, then just what holds it.',
    'Metal holds heat by its volume: as given, else as steel. Heater bodies by common practice.',
    'The content warms by conduction across the channel, with its heat of fusion; none along it.',
  ],
  source: 'Implicit time steps of the finite-volume balance; heat capacities common practice',
  range: 'Within about a quarter of the time, by the heat capacities alone.',
};
