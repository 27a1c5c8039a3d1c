/** Cases of the heat checks that need a whole design. */

import { heatCells } from '../heat/heatCells.ts';
import { nozzleOutlet } from '../heat/stream.ts';
import { madeDesign } from './madeMachine.ts';

/** Nusselt number with which melt comes to the wall's temperature in a nozzle. */
export function barNusselt(): number {
  const design = madeDesign();
  const { material, nozzle } = design;
  const length = nozzle.segments.reduce((sum, segment) => sum + segment.length, 0);
  const massFlow = 1e-6;
  const left = (nozzleOutlet(design, massFlow, 500, 400, 0) - 400) / 100;
  return (-Math.log(left) * massFlow * material.heatCapacityMelt) / (Math.PI * material.conductivity * length);
}

/** Rise of melt that loses a pressure (Pa) in the nozzle and hardly conducts, K; density kg/m³, heat J/(kg K). */
export function dieRise(drop: number, density: number, heat: number): number {
  const design = madeDesign();
  const material = { ...design.material, meltDensity: density, heatCapacityMelt: heat, conductivity: 1e-9 };
  const flow = 1e-8;
  return nozzleOutlet({ ...design, material }, flow * density, 460, 400, drop * flow) - 460;
}

/** Watts over 150 K through a neck of the barrel that spans a tenth of it. m, W/(m K). */
export function tubeHeat(outer: number, inner: number, length: number, conductivity: number): number {
  const design = madeDesign();
  const neck = { start: 4 * length, length, wall: (outer - inner) / 2, conductivity };
  const barrel = { ...design.barrel, boreDiameter: inner, length: 10 * length, heatBreak: neck };
  const { link } = heatCells({ ...design, barrel }, { barrel: 100, nozzle: 4 });
  const nine = link.subarray(40, 49).reduce((sum, own) => sum + 1 / own, 0);
  return 150 / ((nine * 10) / 9);
}

/** Watts over 150 K along 30 mm of a screw's core of a diameter, m; W/(m K). */
export function acrossCore(diameter: number, conductivity: number): number {
  const design = madeDesign();
  const sections = [
    {
      kind: 'plain' as const,
      length: design.barrel.length,
      rootDiameterStart: diameter,
      rootDiameterEnd: diameter,
    },
  ];
  const screw = { ...design.screw, steel: { ...design.screw.steel, conductivity }, sections };
  const { coreLink, length } = heatCells({ ...design, screw });
  return (150 * coreLink[10] * length[10]) / 0.03;
}
