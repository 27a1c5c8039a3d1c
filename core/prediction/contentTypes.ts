/** What a prediction says of granules, melting and the cold end. SI. */

import type { CohesiveArch } from '../feed/arching.ts';
import type { HopperFlow } from '../feed/flowKind.ts';
import type { HopperState } from '../feed/hopper.ts';
import type { SolidsState } from '../feed/solidsTypes.ts';
import type { HeatCreep } from '../heat/heatCreep.ts';
import type { WarmUp } from '../heat/warmUp.ts';
import type { Engagement, MeltingRange } from '../melting/meltFront.ts';
import type { Basis } from './basisType.ts';

/** The hopper: how it empties and what it presses with. */
interface HopperReport extends HopperState {
  readonly flow: HopperFlow;
  readonly cohesive: CohesiveArch;
  /** vertical stress of the granulate on the screw, Pa */
  readonly throatPressure: number;
}

/** Granules between hopper and melt at the working point. */
export interface SolidsReport extends SolidsState {
  readonly hopper: HopperReport;
  readonly basis: Basis;
}

/** Where the granulate softens, begins to melt and is molten, and what the flights make of it. */
export interface MeltingReport {
  /** m, or null where nowhere on the screw */
  readonly softensAt: number | null;
  readonly meltsFrom: number | null;
  /** end of melting by the model that suits each place, and by each model alone */
  readonly ends: MeltingRange;
  readonly engagement: Engagement;
  /** length melted with a film dragged off a packed bed, and length melted by conduction alone, m */
  readonly filmLength: number;
  readonly conductionLength: number;
  readonly basis: Basis;
}

/** Heat that creeps into the throat, running and at a hot standstill. */
export interface ColdEndReport extends HeatCreep {
  readonly basis: Basis;
}

/** Warming up from cold. */
export interface WarmUpReport extends WarmUp {
  readonly basis: Basis;
}
