/** Pressure that tip and nozzle ask for at a given flow. */

import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { gaussLegendre } from '../math/gaussLegendre.ts';
import { annulusFlow } from './annulus.ts';
import { conePressureDrop } from './cone.ts';
import type { HeadElement, HeadPiece } from './headPieces.ts';
import { pipeFlow } from './pipe.ts';
import { createPlateSolver, type PlateSolver } from './plate.ts';
import { stepPressureDrop } from './step.ts';

const rule = gaussLegendre(5);

/** The head ready for solving: elements and one warm plate solver for each point of each ring. */
export interface Head {
  readonly elements: readonly HeadElement[];
  readonly solvers: readonly (readonly PlateSolver[])[];
  /** of every pressure drop; 1 unless a solved field tells better */
  readonly pressureFactor: number;
}

/** What one element costs. */
interface ElementDrop {
  readonly element: HeadElement;
  /** Pa */
  readonly pressureDrop: number;
  /** apparent wall rate at the narrow end, 1/s */
  readonly wallShearRate: number;
}

/** What the head asks for as a whole. */
export interface HeadDrop {
  /** Pa above the pressure outside the orifice */
  readonly total: number;
  readonly elements: readonly ElementDrop[];
  /** power of the turning tip, W */
  readonly swirlPower: number;
  readonly converged: boolean;
}

/** Law of the melt at an element, given the pressure (Pa) on its downstream side. */
export type HeadLaw = (element: HeadElement, pressure: number) => ViscosityLaw;

/** Prepares a head. */
export function createHead(elements: readonly HeadElement[]): Head {
  const solvers = elements.map((each) =>
    each.kind === 'piece' && hasCore(each) ? Array.from(rule.nodes, () => createPlateSolver()) : [],
  );
  return { elements, solvers, pressureFactor: 1 };
}

const hasCore = (piece: HeadPiece): boolean => piece.coreStart > 0 || piece.coreEnd > 0;

/**
 * Pressure drop from the last section of the screw to the outside.
 * @param lawAt law per element
 * @param screwSpeed rev/s; @param volumeFlow m³/s, >= 0; @param outside pressure at the orifice, Pa above ambient
 * Rings by plates with swirl, pipes exactly, cones by cone.ts, steps by step.ts. The free jet's own exit loss is left out.
 */
export function headDrop(
  head: Head,
  lawAt: HeadLaw,
  screwSpeed: number,
  volumeFlow: number,
  outside: number,
): HeadDrop {
  const drops: ElementDrop[] = new Array(head.elements.length);
  let pressure = outside;
  let swirlPower = 0;
  let converged = true;
  for (let i = head.elements.length - 1; i >= 0; i--) {
    const element = head.elements[i];
    const law = lawAt(element, pressure);
    const drop = elementDrop(element, head.solvers[i], law, screwSpeed, volumeFlow);
    const pressureDrop = head.pressureFactor * drop.pressureDrop;
    pressure += pressureDrop;
    swirlPower += drop.swirlPower;
    converged &&= drop.converged;
    drops[i] = { element, pressureDrop, wallShearRate: narrowRate(element, volumeFlow) };
  }
  return { total: pressure - outside, elements: drops, swirlPower, converged };
}

interface Drop {
  readonly pressureDrop: number;
  readonly swirlPower: number;
  readonly converged: boolean;
}

function elementDrop(
  element: HeadElement,
  solvers: readonly PlateSolver[],
  law: ViscosityLaw,
  screwSpeed: number,
  volumeFlow: number,
): Drop {
  const plain = (pressureDrop: number): Drop => ({ pressureDrop, swirlPower: 0, converged: true });
  if (element.kind === 'step') {
    const wide = Math.max(element.from, element.to);
    return plain(stepPressureDrop(law, wide, Math.min(element.from, element.to), volumeFlow));
  }
  if (solvers.length > 0) return ringDrop(element, solvers, law, screwSpeed, volumeFlow);
  const { boreStart, boreEnd, length } = element;
  if (boreStart === boreEnd) return plain(pipeFlow(law, boreStart, volumeFlow).gradient * length);
  return plain(conePressureDrop(law, boreStart, boreEnd, length, volumeFlow));
}

function ringDrop(
  piece: HeadPiece,
  solvers: readonly PlateSolver[],
  law: ViscosityLaw,
  screwSpeed: number,
  volumeFlow: number,
): Drop {
  let pressureDrop = 0;
  let swirlPower = 0;
  let converged = true;
  solvers.forEach((solver, i) => {
    const at = rule.nodes[i];
    const core = piece.coreStart + (piece.coreEnd - piece.coreStart) * at;
    const bore = piece.boreStart + (piece.boreEnd - piece.boreStart) * at;
    const flow = annulusFlow(solver, law, core, bore, screwSpeed, volumeFlow);
    pressureDrop += rule.weights[i] * piece.length * flow.gradient;
    swirlPower += rule.weights[i] * piece.length * flow.swirlPower;
    converged &&= flow.converged;
  });
  return { pressureDrop, swirlPower, converged };
}

/** Apparent wall shear rate at the narrow end, 1/s: 4 Q/(pi R³) for a pipe, 6 Q/(circumference gap²) for a ring. */
function narrowRate(element: HeadElement, volumeFlow: number): number {
  if (element.kind === 'step') return (4 * volumeFlow) / (Math.PI * Math.min(element.from, element.to) ** 3);
  const rate = (bore: number, core: number) =>
    core > 0
      ? (6 * volumeFlow) / (Math.PI * (bore + core) * (bore - core) ** 2)
      : (4 * volumeFlow) / (Math.PI * bore ** 3);
  return Math.max(rate(element.boreStart, element.coreStart), rate(element.boreEnd, element.coreEnd));
}
