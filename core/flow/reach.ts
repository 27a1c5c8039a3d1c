/** One short reach of screw channel: the relation between flow and pressure gradient at a screw speed. */

import { type ViscosityLaw, viscosityAt } from '../material/viscosityLaw.ts';
import { annulusFlow } from './annulus.ts';
import { axialLeak, type Land, landOf, leakPressed, leakStiffness } from './leakage.ts';
import { createPlateSolver, type PlateFlow, type PlateSolver, solvePlate } from './plate.ts';
import { widthFactors } from './shapeFactors.ts';

/** Geometry of a reach, taken at its middle. Lengths m, angles rad. */
export interface ReachShape {
  readonly flighted: boolean;
  readonly rootRadius: number;
  readonly barrelRadius: number;
  /** radial, root to barrel */
  readonly depth: number;
  readonly starts: number;
  readonly helixBarrel: number;
  readonly helixMean: number;
  /** normal to the flight */
  readonly widthBarrel: number;
  readonly widthMean: number;
  /** land of the flight, normal to it */
  readonly land: number;
  readonly clearance: number;
}

/** A reach ready for solving: shape, width factors, working memory of two plate problems. */
export interface Reach {
  readonly shape: ReachShape;
  readonly dragFactor: number;
  readonly pressureFactor: number;
  /** of the channel's power against the infinitely wide channel; 1 unless a solved section tells better */
  readonly powerFactor: number;
  /** free flow (no gradient) and loaded flow, kept warm from call to call */
  readonly open: PlateSolver;
  readonly loaded: PlateSolver;
  /** last flow across the flight per length of flight, m²/s */
  leakPerLength: number;
}

/** What a reach does at a given flow and speed. */
export interface ReachFlow {
  /** dp/dz along the axis, Pa/m; positive where the screw builds pressure */
  readonly gradient: number;
  /** flow it would carry without a gradient, what the land drags back taken off, m³/s */
  readonly openFlow: number;
  /** axial flow lost over the flights, m³/s */
  readonly leakFlow: number;
  /** power the turning screw puts in per axial length: channel, flight land, W/m */
  readonly channelPower: number;
  readonly landPower: number;
  /** mean shear rate across the gap, 1/s, and the viscosity there, Pa s */
  readonly shearRate: number;
  readonly viscosity: number;
  /** axial pull of the melt's shear on the screw, per axial length, N/m */
  readonly axialShear: number;
  readonly converged: boolean;
}

/**
 * Prepares a reach.
 * @param shape geometry
 * @param infinitelyWide true to leave out the side walls (textbook formulas without shape factors)
 * @param index local power-law index of the melt at the channel's shear rate, for the side walls' share
 */
export function createReach(shape: ReachShape, infinitelyWide = false, index = 1): Reach {
  const walls = shape.flighted && !infinitelyWide;
  return {
    shape,
    dragFactor: walls ? widthFactors(shape.depth / shape.widthBarrel, index).drag : 1,
    pressureFactor: walls ? widthFactors(shape.depth / shape.widthMean, index).pressure : 1,
    powerFactor: 1,
    open: createPlateSolver(),
    loaded: createPlateSolver(),
    leakPerLength: 0,
  };
}

/**
 * Gradient, leakage and power of a reach at a given flow.
 * @param reach its working memory is used as the starting point
 * @param law isothermal law of the melt here
 * @param screwSpeed rev/s, >= 0
 * @param volumeFlow net axial flow, m³/s
 * The drag term uses the barrel's helix angle and width, the pressure term those at mean depth: against helical
 * finite-element solutions this stays within 2 % for Newtonian melt down to a root of 3/8 of the bore.
 * Source: Rowell & Finlayson 1928 (shape factors), Griffith 1962 (coupled components), Tadmor & Klein 1970 (leakage).
 */
export function solveReach(reach: Reach, law: ViscosityLaw, screwSpeed: number, volumeFlow: number): ReachFlow {
  return reach.shape.flighted
    ? flightedReach(reach, law, screwSpeed, volumeFlow)
    : plainReach(reach, law, screwSpeed, volumeFlow);
}

function plainReach(reach: Reach, law: ViscosityLaw, screwSpeed: number, volumeFlow: number): ReachFlow {
  const { rootRadius, barrelRadius } = reach.shape;
  const ring = annulusFlow(reach.loaded, law, rootRadius, barrelRadius, screwSpeed, volumeFlow);
  return {
    gradient: -ring.gradient,
    openFlow: 0,
    leakFlow: 0,
    channelPower: ring.swirlPower,
    landPower: 0,
    shearRate: ring.shearRate,
    viscosity: viscosityAt(law, ring.shearRate),
    axialShear: 0,
    converged: ring.converged,
  };
}

function flightedReach(reach: Reach, law: ViscosityLaw, screwSpeed: number, volumeFlow: number): ReachFlow {
  const { shape } = reach;
  const speed = 2 * Math.PI * shape.barrelRadius * screwSpeed;
  const down = speed * Math.cos(shape.helixBarrel);
  const across = speed * Math.sin(shape.helixBarrel);
  const landViscosity = shape.clearance > 0 ? viscosityAt(law, Math.max(speed / shape.clearance, 1e-6)) : 0;
  const land = landOf(shape, across, landViscosity);
  let flow = solvePlates(reach, law, down, across, volumeFlow, land);
  let settled = !(shape.clearance > 0);
  for (let pass = 0; pass < 12 && !settled; pass++) {
    const miss = leakPressed(shape, land, flow.loaded) - reach.leakPerLength;
    settled = Math.abs(miss) <= 2e-4 * across * shape.depth;
    const viscosity = viscosityAt(law, Math.max(flow.loaded.shearRate, 1e-9));
    reach.leakPerLength += miss / (1 + leakStiffness(shape, land, viscosity, reach.pressureFactor));
    if (!settled) flow = solvePlates(reach, law, down, across, volumeFlow, land);
  }
  return describe(reach, law, speed, landViscosity, land, flow, settled);
}

/** Free and loaded plate flow of a reach. */
interface Plates {
  readonly open: PlateFlow;
  readonly loaded: PlateFlow;
}

/** Both plate problems with the leak as it stands. */
function solvePlates(
  reach: Reach,
  law: ViscosityLaw,
  down: number,
  across: number,
  volumeFlow: number,
  land: Land,
): Plates {
  const { shape, leakPerLength } = reach;
  const cross = { wallSpeed: across, given: 'flow', value: leakPerLength } as const;
  const open = solvePlate(reach.open, law, shape.depth, { wallSpeed: down, given: 'gradient', value: 0 }, cross);
  const wanted = loadedFlow(reach, open.down.flow, volumeFlow + axialLeak(shape, land, leakPerLength));
  const loaded = solvePlate(reach.loaded, law, shape.depth, { wallSpeed: down, given: 'flow', value: wanted }, cross);
  return { open, loaded };
}

/** Plate flow of the loaded channel that leaves the wanted net flow after the side walls' share. */
function loadedFlow(reach: Reach, openPerWidth: number, throughFlow: number): number {
  const { shape, dragFactor, pressureFactor } = reach;
  const drag = dragFactor * shape.widthBarrel * openPerWidth;
  return openPerWidth - (drag - throughFlow / shape.starts) / (pressureFactor * shape.widthMean);
}

function describe(
  reach: Reach,
  law: ViscosityLaw,
  speed: number,
  landViscosity: number,
  land: Land,
  { open, loaded }: Plates,
  settled: boolean,
): ReachFlow {
  const { shape } = reach;
  const leakFlow = axialLeak(shape, land, reach.leakPerLength);
  const sin = Math.sin(shape.helixBarrel);
  const cos = Math.cos(shape.helixBarrel);
  const channelArea = (shape.starts * shape.widthBarrel) / sin;
  const landArea = (shape.starts * shape.land) / sin;
  const around = loaded.down.lidStress * cos + loaded.cross.lidStress * sin;
  const along = loaded.down.lidStress * sin - loaded.cross.lidStress * cos;
  return {
    gradient: loaded.down.gradient / Math.sin(shape.helixMean),
    openFlow: shape.starts * reach.dragFactor * shape.widthBarrel * open.down.flow - land.dragged * land.dragLength,
    leakFlow,
    channelPower: reach.powerFactor * around * speed * channelArea,
    landPower: shape.clearance > 0 ? ((landViscosity * speed * speed) / shape.clearance) * landArea : 0,
    shearRate: loaded.shearRate,
    viscosity: viscosityAt(law, loaded.shearRate),
    axialShear: along * channelArea,
    converged: open.converged && loaded.converged && settled,
  };
}
