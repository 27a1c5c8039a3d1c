/** Checks of melting: the film between barrel and bed, the bed it melts, melt that sinks between grains. */

import { thinnedShear } from '../melting/filmShear.ts';
import { largeBed, meltedBed, permeability, smallBed } from './meltingCases.ts';
import type { Check } from './types.ts';

const film =
  'film of a power-law melt whose consistency falls exponentially, scipy quad and brentq on the shear stress';
const bed =
  'heat and mass balances of one slice of bed and film, scipy brentq for the film and solve_ivp along the channel';
const spheres = 'A. A. Zick & G. M. Homsy, J. Fluid Mech. 115 (1982) 13, table 2, as copied in a public solver’s test';
/** film of index 0.4 that is exp(1) times thinner at the barrel: 800 Pa s, 0.3 m/s, 80 K, 0.2 W/(m K) */
const thinned = () => thinnedShear(800, 0.4, 2.5, 0.3, 80, 0.2);

/** All checks of the melting. */
export const meltingChecks: readonly Check[] = [
  {
    id: 'melting.heatToBed',
    stage: 'melting',
    quantity: 'Heat of shear that reaches the bed through a film 1 mm thick, 800 Pa s, index 0.4, 0.3 m/s, b 2.5',
    unit: 'kW/m²',
    expected: 12.28171,
    limit: 1e-5,
    measure: 'relative',
    kind: 'independent',
    source: film,
    got: () => thinned().toBed,
  },
  {
    id: 'melting.heatOfShear',
    stage: 'melting',
    quantity: 'All heat of shear in that film',
    unit: 'kW/m²',
    expected: 39.545132,
    limit: 1e-5,
    measure: 'relative',
    kind: 'independent',
    source: film,
    got: () => thinned().whole,
  },
  {
    id: 'melting.carriedFilm',
    stage: 'melting',
    quantity: 'Melt that the same film carries over that of a uniform one',
    unit: '',
    expected: 0.621149,
    limit: 1e-5,
    measure: 'relative',
    kind: 'independent',
    source: film,
    got: () => thinned().carried,
  },
  {
    id: 'melting.filmMixedTemperature',
    stage: 'melting',
    quantity: 'Mixed temperature of a film of 80 K by conduction alone, same thinning',
    unit: 'K',
    expected: 59.517428,
    limit: 1e-5,
    measure: 'relative',
    kind: 'independent',
    source: film,
    got: () => thinnedShear(1e-9, 0.4, 2.5, 0.3, 80, 0.2).rise,
  },
  {
    id: 'melting.filmWarmedByShear',
    stage: 'melting',
    quantity: 'Mixed temperature of a Newtonian film of 40 K with shear, 500 Pa s, 0.3 m/s',
    unit: 'K',
    expected: 45.416667,
    limit: 1e-5,
    measure: 'relative',
    kind: 'independent',
    source: 'heat equation across the film, scipy solve_bvp',
    got: () => thinnedShear(500, 1, 0, 0.3, 40, 0.2).rise,
  },
  {
    id: 'melting.filmThickness',
    stage: 'melting',
    quantity: 'Film on a bed of polyethylene in a 63.5 mm screw, 82 rev/min',
    unit: 'mm',
    expected: 0.357111,
    limit: 1e-4,
    measure: 'relative',
    kind: 'independent',
    source: bed,
    got: () => meltedBed(largeBed, 0).film * 1e3,
  },
  {
    id: 'melting.quarterLeft',
    stage: 'melting',
    quantity: 'Solid of that bed left after 1.5961 m of channel',
    unit: '',
    expected: 0.25,
    limit: 1e-3,
    measure: 'relative',
    kind: 'independent',
    source: bed,
    got: () => meltedBed(largeBed, 1.59611).left,
  },
  {
    id: 'melting.smallQuarterLeft',
    stage: 'melting',
    quantity: 'Solid left after 154.19 mm of channel in a 16 mm screw, 1 kg/h',
    unit: '',
    expected: 0.25,
    limit: 1e-3,
    measure: 'relative',
    kind: 'independent',
    source: bed,
    got: () => meltedBed(smallBed, 0.1541874).left,
  },
  {
    id: 'melting.looseBed',
    stage: 'melting',
    quantity: 'Permeability over grain size squared of a bed with 55 % of pores',
    unit: '',
    expected: 4.3935e-3,
    limit: 0.06,
    measure: 'relative',
    kind: 'published',
    source: `${spheres}: drag 28.1 on a cubic array, reduced to a permeability`,
    got: () => permeability(0.45),
  },
  {
    id: 'melting.touchingBed',
    stage: 'melting',
    quantity: 'The same of touching spheres in a cubic array',
    unit: '',
    expected: 2.5203e-3,
    limit: 0.15,
    measure: 'relative',
    kind: 'published',
    source: `${spheres}: drag 42.1; a lattice is not a random bed, hence the wide limit`,
    got: () => permeability(0.5236),
  },
];
