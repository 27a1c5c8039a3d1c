/** Machines of textbooks for the search of the working point: a valid design whose melt, channel and head are theirs. */

import { validateDesign } from '../design/validate.ts';
import { createHead, type Head } from '../flow/headDrop.ts';
import type { Reach } from '../flow/reach.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { createMachine, type Machine } from '../prediction/machine.ts';
import { freshMemory, type Pumping, pumpingAt } from '../prediction/pumping.ts';
import type { Material } from '../project/materialSchema.ts';
import { newProject } from '../project/templates/newProject.ts';
import { madeUp } from './given.ts';
import { orThrow } from './orThrow.ts';

/** A melt without character: only the law handed to `textbookMachine` counts, the rest lets a design be made. */
const plainMelt: Material = {
  id: 'plain-melt',
  name: 'melt of a textbook',
  invented: true,
  form: 'pellet',
  rheology: { model: 'newtonian', viscosityPaS: madeUp(100), shift: { kind: 'none' } },
  meltDensityKgM3: madeUp(1000),
  solidDensityKgM3: madeUp(1000),
  bulkDensityKgM3: madeUp(600),
  grain: { d10Mm: madeUp(2), d50Mm: madeUp(3), d90Mm: madeUp(3), aspectRatio: madeUp(1) },
  frictionOnBarrel: madeUp(0.4),
  frictionOnScrew: madeUp(0.2),
  conductivityWPerMK: madeUp(0.2),
  heatCapacitySolidJPerKgK: madeUp(2000),
  heatCapacityMeltJPerKgK: madeUp(2000),
  heatOfFusionJPerKg: madeUp(0),
  softeningC: madeUp(80),
  meltingC: madeUp(100),
  windowLowC: madeUp(150),
  windowHighC: madeUp(250),
  maxSafeC: madeUp(300),
  degradation: [],
  colourAnchors: [],
  cautions: [],
};

/** What a textbook says of its machine. SI. */
export interface TextbookMachine {
  readonly bore: number;
  /** full length of the melt on the screw, along the axis */
  readonly length: number;
  readonly law: ViscosityLaw;
  /** channel at a place along that length, 0 to 1 */
  readonly reachAt: (share: number) => Reach;
  /** round die behind the screw */
  readonly die: { readonly radius: number; readonly length: number };
}

/** A head that is one round land. */
function dieHead({ radius, length }: TextbookMachine['die']): Head {
  const bore = { boreStart: radius, boreEnd: radius, coreStart: 0, coreEnd: 0 };
  return createHead([{ kind: 'piece', name: 'die', part: 'nozzle', segment: 0, z: 0, length, ...bore }]);
}

/** The machine that the working point is searched for: melt comes in molten and fills the given length. */
export function textbookMachine({ bore, length, law, reachAt, die }: TextbookMachine): Machine {
  const boreMm = 1e3 * bore;
  const sizes = {
    boreMm,
    heatedMm: Math.max(3 * boreMm, Math.min(30 * boreMm, 1.1e3 * length)),
    orificeMm: 0.1 * boreMm,
  };
  const drive = { torqueNm: 500, gearRatio: 10 };
  const project = newProject({ name: 'textbook', date: '2026-01-01', material: plainMelt, ...sizes, ...drive });
  const checked = orThrow(validateDesign(project, 'A'));
  const { barrel, material, process } = checked;
  const made = createMachine(checked, 4);
  const { stations } = made;
  const end = stations.z[stations.count - 1];
  const start = end - length;
  const design = {
    ...checked,
    barrel: { ...barrel, feedOpening: { ...barrel.feedOpening, start } },
    material: { ...material, viscosityLaw: () => law },
    process: { ...process, feedTemperature: material.windowLow },
  };
  const reaches = made.channel.reaches.map((reach, i) =>
    reach ? reachAt(Math.max(0, ((stations.z[i] + stations.z[i + 1]) / 2 - start) / length)) : null,
  );
  return { ...made, design, channel: { stations, reaches }, head: dieHead(die) };
}

/** Where screw and die balance, at rev/s. */
export function balanceOf(machine: Machine, screwSpeed: number): Pumping {
  const found = pumpingAt(machine, screwSpeed, freshMemory(machine));
  if (!found.converged) throw new Error('the search of the working point did not converge');
  return found;
}
