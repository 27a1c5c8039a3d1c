/** What the results about granules, melting, cold end and warming up rest on. */

import type { BasisText } from './bases.ts';

/** Granules between opening and melt. */
export const solidsBasis: BasisText = {
  model: 'Packed plug that slides on barrel, root and flanks',
  assumptions: [
    'Bulk density is constant and pressure alike in all directions; friction is Coulomb’s.',
    'Where more is offered than the screw takes, be it by hopper or feeder, the plug starts under the hopper’s pressure (bin theory); otherwise granules run loose until they back up from the melt.',
    'At the working point melt begins without pressure, so the plug has nothing to hold and is packed nowhere; what it could build is told beside it.',
    'Pressure grows exponentially along the plug and is capped where granules yield at the wall.',
    'Granules do not roll; a few large granules in a small channel do, and carry less.',
  ],
  source: 'Darnell & Mol 1956 in the arrangement of Tadmor & Klein 1970 (from memory); hopper: Janssen 1895',
  range:
    'Tells what a plug could hold and what granules cost in torque. Friction is rarely known within 30 %, and pressure follows it by powers of ten.',
};

/** Melting along the screw. */
export const meltingReportBasis: BasisText = {
  model: 'Granules heated by conduction, and a dragged melt film on them as far as it brings more heat',
  assumptions: [
    'Conduction: from barrel and root, as a slab; packed granules by their share of solid, and at most as fast as heat enters a single granule.',
    'Film: the barrel drags melt off the bed, which stays packed; relative speed of barrel and bed, shear heat with the local power-law index, heat carried by the film, thickness in balance from the start.',
    'The bed takes the greater of both, so a slow screw melts by conduction, and a film never melts later than that.',
    'A film counts in full from 10 K above melting, two median granules over the depth, a channel that is full of granules (offered more than the screw takes), and melt that forms faster than it sinks in; less of each lets it fade smoothly. These ramps are own choices.',
    'Melting begins where a hundredth of the mass is melt, and ends where nothing solid is left of the mean; single granules may pass it.',
  ],
  source:
    'Film: Tadmor & Klein 1970 (from memory). Conduction: first mode of slab and sphere, own arithmetic. Blending of both: own arithmetic',
  range:
    'The two models bracket small screws; where they differ much, trust neither end alone. Shear of melt among granules without a film is left out of torque and heat.',
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
