/** One short reach of screw channel: the relation between flow and pressure gradient at a screw speed. */

import { type ViscosityLaw, viscosityAt } from '../material/viscosityLaw.ts';
import { annulusFlow } from './annulus.ts';
import { createPlateSolver, type PlateFlow, type PlateSolver, solvePlate } from './plate.ts';
import { dragShapeFactor, pressureShapeFactor } from './shapeFactors.ts';

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
  /** flow it would carry without a gradient, m³/s */
  readonly openFlow: number;
  /** axial flow lost over the flights, m³/s, part of neither of the above */
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
 */
export function createReach(shape: ReachShape, infinitelyWide = false): Reach {
  const walls = shape.flighted && !infinitelyWide;
  return {
    shape,
    dragFactor: walls ? dragShapeFactor(shape.depth / shape.widthBarrel) : 1,
    pressureFactor: walls ? pressureShapeFactor(shape.depth / shape.widthMean) : 1,
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
  const downSpeed = speed * Math.cos(shape.helixBarrel);
  const crossSpeed = speed * Math.sin(shape.helixBarrel);
  const landViscosity = shape.clearance > 0 ? viscosityAt(law, Math.max(speed / shape.clearance, 1e-6)) : 0;
  let open: PlateFlow | null = null;
  let loaded: PlateFlow | null = null;
  let leak = { perLength: 0, axial: 0 };
  const passes = shape.clearance > 0 ? 5 : 1;
  for (let pass = 0; pass < passes; pass++) {
    const cross = { wallSpeed: crossSpeed, given: 'flow', value: reach.leakPerLength } as const;
    leak = leakage(shape, crossSpeed, landViscosity, loaded, reach.leakPerLength);
    open = solvePlate(reach.open, law, shape.depth, { wallSpeed: downSpeed, given: 'gradient', value: 0 }, cross);
    const wanted = loadedFlow(reach, open.down.flow, volumeFlow + leak.axial);
    loaded = solvePlate(reach.loaded, law, shape.depth, { wallSpeed: downSpeed, given: 'flow', value: wanted }, cross);
    const next = leakage(shape, crossSpeed, landViscosity, loaded, reach.leakPerLength);
    const change = Math.abs(next.perLength - reach.leakPerLength);
    reach.leakPerLength = next.perLength;
    leak = next;
    if (change <= 2e-4 * crossSpeed * shape.depth) break;
  }
  if (!open || !loaded) throw new Error('unreachable: at least one pass runs');
  return describe(reach, law, speed, landViscosity, open, loaded, leak.axial);
}

/** Plate flow of the loaded channel that leaves the wanted net flow after the side walls' share. */
function loadedFlow(reach: Reach, openPerWidth: number, throughFlow: number): number {
  const { shape, dragFactor, pressureFactor } = reach;
  const drag = dragFactor * shape.widthBarrel * openPerWidth;
  return openPerWidth - (drag - throughFlow / shape.starts) / (pressureFactor * shape.widthMean);
}

/**
 * Flow over the flight land: dragged by the barrel and pressed by the difference between the flight's two sides, which
 * is the cross-channel rise plus the down-channel rise of one turn.
 */
function leakage(
  shape: ReachShape,
  crossSpeed: number,
  landViscosity: number,
  loaded: PlateFlow | null,
  fallback: number,
): { perLength: number; axial: number } {
  if (!(shape.clearance > 0)) return { perLength: 0, axial: 0 };
  const dragged = (crossSpeed * shape.clearance) / 2;
  const turn = 2 * Math.PI * shape.barrelRadius * Math.cos(shape.helixBarrel);
  const rise = loaded ? loaded.cross.gradient * shape.widthBarrel + (loaded.down.gradient * turn) / shape.starts : 0;
  const land = Math.max(shape.land, shape.clearance);
  const slot = landViscosity > 0 ? (shape.clearance ** 3 * rise) / (12 * landViscosity * land) : 0;
  const pressed = loaded ? slot : Math.max(0, fallback - dragged);
  const channelShare = (shape.starts * shape.widthBarrel) / Math.tan(shape.helixBarrel);
  return { perLength: dragged + pressed, axial: dragged * channelShare + pressed * turn };
}

function describe(
  reach: Reach,
  law: ViscosityLaw,
  speed: number,
  landViscosity: number,
  open: PlateFlow,
  loaded: PlateFlow,
  leakFlow: number,
): ReachFlow {
  const { shape } = reach;
  const sin = Math.sin(shape.helixBarrel);
  const cos = Math.cos(shape.helixBarrel);
  const channelArea = (shape.starts * shape.widthBarrel) / sin;
  const landArea = (shape.starts * shape.land) / sin;
  const around = loaded.down.lidStress * cos + loaded.cross.lidStress * sin;
  const along = loaded.down.lidStress * sin - loaded.cross.lidStress * cos;
  return {
    gradient: loaded.down.gradient / Math.sin(shape.helixMean),
    openFlow: shape.starts * reach.dragFactor * shape.widthBarrel * open.down.flow,
    leakFlow,
    channelPower: around * speed * channelArea,
    landPower: shape.clearance > 0 ? ((landViscosity * speed * speed) / shape.clearance) * landArea : 0,
    shearRate: loaded.shearRate,
    viscosity: viscosityAt(law, loaded.shearRate),
    axialShear: along * channelArea,
    converged: open.converged && loaded.converged,
  };
}
