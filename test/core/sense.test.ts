/** Common sense over three machines of different size and granulate: which way a figure must move when one thing changes. */

import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../core/design/validate.ts';
import { predict } from '../../core/prediction/predict.ts';
import type { Prediction } from '../../core/prediction/types.ts';
import type { Material } from '../../core/project/materialSchema.ts';
import type { Project, Revision } from '../../core/project/schema.ts';
import { type NewProjectAsk, newProject } from '../../core/project/templates/newProject.ts';
import { expectOk, loadMaterial } from '../helpers/projects.ts';

interface Machine extends Omit<NewProjectAsk, 'name' | 'material' | 'date'> {
  readonly title: string;
  /** of the shipped granulate */
  readonly id: string;
  readonly grainMm: number;
}

/** The machines; invented. Grains are fine enough to enter freely, so that the flow is what is looked at. */
const machines = [
  {
    ...{ title: '8 mm, PCL', boreMm: 8, heatedMm: 60, orificeMm: 0.8, torqueNm: 0.6, gearRatio: 14 },
    ...{ id: 'pcl', grainMm: 1 },
  },
  {
    ...{ title: '14 mm, PLA with wood', boreMm: 14, heatedMm: 140, orificeMm: 1.2, torqueNm: 1.9, gearRatio: 15 },
    ...{ id: 'pla-wood-flour', grainMm: 2 },
  },
  {
    ...{ title: '25 mm, HDPE', boreMm: 25, heatedMm: 300, orificeMm: 3, torqueNm: 4, gearRatio: 20 },
    ...{ id: 'hdpe', grainMm: 3 },
  },
] as const satisfies readonly Machine[];

interface Parts {
  readonly project: Project;
  readonly revision: Revision;
  readonly material: Material;
}

/** The machine with a change made to it. */
function made({ grainMm, id, ...ask }: Machine, change: (parts: Parts) => void = () => {}): Project {
  const material = structuredClone(loadMaterial(id));
  for (const key of ['d10Mm', 'd50Mm', 'd90Mm'] as const) material.grain[key].value = grainMm;
  const project = structuredClone(newProject({ ...ask, name: ask.title, material, date: '2026-01-01' }));
  const [revision] = project.revisions;
  const [used] = project.materials;
  if (!revision || !used) throw new Error('a new project has a revision and its material');
  change({ project, revision, material: used });
  return project;
}

/** Coarse figures: directions are asked for and no digits. */
const coarse = { stationsPerTurn: 4, curvePoints: 0 };
const design = (project: Project) => expectOk(validateDesign(project, 'A'));
const foretold = (machine: Machine, change?: (parts: Parts) => void): Prediction =>
  predict(design(made(machine, change)), coarse);

const speed = (rpm: number) => (parts: Parts) => {
  parts.project.process.screwSpeedRpm = rpm;
};
const moreHeat = (byK: number) => (parts: Parts) => {
  parts.revision.nozzle.setTempC += byK;
  for (const zone of parts.revision.barrel.zones) if (zone.kind === 'heated') zone.setTempC += byK;
};
const orifice = (times: number, longer: number) => (parts: Parts) => {
  const [cone, land] = parts.revision.nozzle.segments.slice(-2);
  if (!cone || !land) throw new Error('a nozzle has a cone and a land');
  cone.endDiameterMm *= times;
  land.startDiameterMm *= times;
  land.endDiameterMm *= times;
  land.lengthMm *= longer;
};
/** Roots thinner by a share of the bore from end to end. */
const deeper = (share: number) => (parts: Parts) => {
  const byMm = share * parts.revision.barrel.boreDiameterMm;
  for (const section of parts.revision.screw.sections) {
    section.rootDiameterStartMm -= byMm;
    section.rootDiameterEndMm -= byMm;
  }
};
const newtonian = (viscosity: number) => (parts: Parts) => {
  const viscosityPaS = { value: viscosity, source: 'invented for a test', status: 'invented' as const };
  parts.material.rheology = { model: 'newtonian', viscosityPaS, shift: { kind: 'none' } };
};

const grains = (mm: number) => (parts: Parts) => {
  for (const key of ['d10Mm', 'd50Mm', 'd90Mm'] as const) parts.material.grain[key].value = mm;
};
/** The depth under the feed opening, mm. */
const feedDepthMm = ({ revision: { screw, barrel } }: Parts): number =>
  barrel.boreDiameterMm / 2 - screw.radialClearanceMm - (screw.sections[0]?.rootDiameterStartMm ?? 0) / 2;

describe.each(machines)('$title', (machine) => {
  const base = foretold(machine);
  const { volumeFlow, headPressure } = base.output;

  test('lets pumping alone limit, so that what follows is about flow', () => expect(base.limit).toBe('pumping'));

  test('keeps melt as long as its volume over its flow', () => {
    const volume = base.residence.parts.reduce((sum, part) => sum + part.volume, 0);
    expect(base.residence.mean / (volume / volumeFlow)).toBeCloseTo(1, 6);
    expect(volume).toBeLessThan(base.geometry.channelVolume + base.geometry.tipVolume + base.geometry.nozzleVolume);
  });

  test('gives about twice as much at twice the speed, melt that stays half as long or less and is no darker', () => {
    const faster = foretold(machine, speed(40));
    const ratio = faster.output.volumeFlow / volumeFlow;
    expect(ratio).toBeGreaterThan(1.8);
    expect(ratio).toBeLessThan(2.1);
    const shorter = base.residence.mean / faster.residence.mean;
    // more than half, since granules melt further on and less of the screw holds melt
    expect(shorter).toBeGreaterThan(1.8);
    expect(shorter).toBeLessThan(3);
    if (base.colour.dE00Mean !== null) expect(faster.colour.dE00Mean).toBeLessThan(base.colour.dE00Mean);
  });

  test('turns easier with a hotter barrel', () =>
    expect(foretold(machine, moreHeat(15)).drive.torque).toBeLessThan(0.97 * base.drive.torque));

  test('gives less at more pressure through a finer orifice, and through a longer land', () => {
    for (const change of [orifice(0.7, 1), orifice(1, 2)]) {
      const { output } = foretold(machine, change);
      expect(output.headPressure).toBeGreaterThan(1.02 * headPressure);
      expect(output.volumeFlow).toBeLessThan(volumeFlow);
    }
  });

  test('gives more from a deeper channel', () =>
    expect(foretold(machine, deeper(0.02)).output.volumeFlow).toBeGreaterThan(1.02 * volumeFlow));

  test('takes more torque for a stiffer melt', () => {
    const [thin, stiff] = [500, 1000].map((viscosity) => foretold(machine, newtonian(viscosity)).drive.torque);
    expect(stiff).toBeGreaterThan(1.2 * (thin ?? Number.NaN));
  });

  test('gives nothing with granules larger than the channel is deep', () => {
    const { limit, output } = foretold(machine, (parts) => grains(1.4 * feedDepthMm(parts))(parts));
    expect(limit).toBe('grainFit');
    expect(output.flows).toBe(false);
  });

  test('gives about eight times as much with everything twice as large, for a melt that does not thin', () => {
    const { boreMm, heatedMm, orificeMm, grainMm, ...same } = machine;
    // a wide orifice and a slow turn, since granules of a large screw melt further on and leave less length to press
    const scaled = (by: number) => {
      const sizes = { boreMm: by * boreMm, heatedMm: by * heatedMm, grainMm: by * grainMm };
      const ask = { ...same, ...sizes, orificeMm: 3 * by * orificeMm, torqueNm: 10 * machine.torqueNm };
      return foretold(ask, (parts) => {
        newtonian(500)(parts);
        speed(10)(parts);
        parts.revision.screw.radialClearanceMm = 0.007 * sizes.boreMm;
      }).output.volumeFlow;
    };
    const ratio = scaled(2) / scaled(1);
    expect(ratio).toBeGreaterThan(7.4);
    expect(ratio).toBeLessThan(8.6);
  });
});

test('a slower print darkens: the colour shift falls with every step of speed', () => {
  const shifts = [5, 10, 20, 40].map((rpm) => foretold(machines[1], speed(rpm)).colour.dE00Mean ?? Number.NaN);
  for (const [index, shift] of shifts.entries()) if (index > 0) expect(shift).toBeLessThan(shifts[index - 1] ?? 0);
});
