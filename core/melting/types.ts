/** Melting along the screw: what goes in and what comes out. */

import type { Design } from '../design/types.ts';
import type { MeltStart } from '../flow/channel.ts';
import type { Stations } from '../geometry/types.ts';

/** A screw at a speed and a flow. */
export interface MeltingCase {
  readonly design: Design;
  readonly stations: Stations;
  /** barrel and screw core temperatures at the stations, K */
  readonly walls: { readonly barrel: Float64Array; readonly screw: Float64Array };
  /** rev/s, >= 0 */
  readonly screwSpeed: number;
  /** kg/s, > 0 */
  readonly massFlow: number;
  /** heat made in the melt behind the end of melting per axial length, W/m, per reach; what stands ahead of it is left out */
  readonly dissipation: Float64Array;
}

/** Which model may be used: the one that suits each place, or one of them everywhere it can be computed. */
export type MeltingChoice = 'suited' | 'conduction' | 'film';

/** How a reach melts: not yet, by conduction, with a film that counts, or all is melt. */
export const meltingModel = { loose: 0, conduction: 1, film: 2, melt: 3 } as const;

/** Granules and melt along the stations. */
export interface MeltProgress {
  /** K per station, of solid and melt were they evened out: the temperature of the mean heat content */
  readonly temperature: Float64Array;
  /** specific enthalpy per station, J/kg above the solid at melting */
  readonly enthalpy: Float64Array;
  /** mean of the solid per station, K; the melting temperature where none is left */
  readonly solid: Float64Array;
  /** 0 to 1 per station: melted share of the mass */
  readonly molten: Float64Array;
  /** width of the solid bed over that of the channel, per station; 1 where there is no film yet, 0 where all is molten */
  readonly bed: Float64Array;
  /** thickness of the film between barrel and bed, times the share of it at work beside conduction, m per station; 0 = none */
  readonly film: Float64Array;
  /** where melting is complete; reach = last station index where it never is */
  readonly start: MeltStart;
  /** first z where a hundredth of the mass is melt, m, or null */
  readonly meltsFrom: number | null;
  /** first z where the mean passes the softening point or melt is there, m, or null */
  readonly softensAt: number | null;
  /** per reach, W/(m K): heat from wall and core per axial length and kelvin above `temperature` */
  readonly exchange: { readonly wall: Float64Array; readonly core: Float64Array };
  /** shear power in the film per axial length, W/m, per reach: heat in the granulate and load of the drive */
  readonly filmPower: Float64Array;
  /** per reach, see meltingModel */
  readonly model: Uint8Array;
}

/** A stretch of one reach. */
export interface Stretch {
  readonly reach: number;
  /** where it begins and how long it is, m along the axis */
  readonly from: number;
  readonly length: number;
  readonly depth: number;
  readonly barrelRadius: number;
  readonly rootRadius: number;
  /** K */
  readonly wall: number;
  readonly core: number;
}

/** Granulate on its way; steps change it. */
export interface Granulate {
  /** J/kg above the solid at melting */
  enthalpy: number;
  /** melted share of the mass */
  molten: number;
  /** mean temperature of the solid, K */
  solid: number;
  /** m; 0 = none */
  film: number;
  /** width of bed over width of channel */
  bed: number;
  /** all channels across their run where the film began, m²; 0 = there is no film */
  filmFrom: number;
  /** nothing solid is left, or was: what freezes later is told by the enthalpy alone */
  complete: boolean;
}

/** What a step tells besides the granulate. W/(m K), W/m. */
export interface Step {
  readonly wall: number;
  readonly core: number;
  readonly filmPower: number;
  readonly model: number;
  /** share of the stretch after which melting was complete, null where that did not happen in it */
  readonly done: number | null;
}
