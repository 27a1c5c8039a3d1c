import { expect, test } from 'vitest';
import { checkProject, fitRheology, type RheologyFit } from '../../../core/index.ts';
import { designMaterial } from '../../../core/material/designMaterial.ts';
import { takeInto, takeIntoCopy } from '../../../renderer/fit/takeOver.ts';
import { addMaterial } from '../../../renderer/store/materials.ts';
import { expectOk, loadExample, loadMaterial } from '../../helpers/projects.ts';

const points = [180, 190, 200].flatMap((celsius) =>
  [1, 10, 100, 1000].map((shearRate) => ({
    shearRate,
    temperature: celsius + 273.15,
    viscosity: (5000 * Math.exp(-0.02 * (celsius - 190))) / (1 + 0.02 * shearRate) ** 0.7,
  })),
);
const fit: RheologyFit = expectOk(fitRheology('carreauYasuda', points, { source: 'a pasted table' }));
const before = addMaterial(loadMaterial('phb'))(loadExample('demo'));

test('the law comes with the number of readings, the range and the status; the rest of the material stays', () => {
  const after = takeInto('phb', fit)(before);
  const material = after.materials[1];
  expect(material).toMatchObject({
    rheology: {
      model: 'carreauYasuda',
      zeroShearViscosityPaS: { source: expect.stringMatching(/^fitted here to 12 points of a pasted table/) },
    },
    rheologyRange: { fromC: 180, toC: 200, status: 'measured here' },
  });
  expect({ ...material, rheology: 0, rheologyRange: 0 }).toEqual({
    ...before.materials[1],
    rheology: 0,
    rheologyRange: 0,
  });
  expect(checkProject(after).ok).toBe(true);
  expect(material && designMaterial(material).ok).toBe(true);
  expect(after.materials[0]).toBe(before.materials[0]);
});

test('what the readings determine is measured here; what they do not is estimated', () => {
  const open: RheologyFit = {
    ...fit,
    parameters: fit.parameters.map((one) => ({ ...one, determined: one.name !== 'timeConstantS' })),
  };
  const { rheology } = takeInto('phb', open)(before).materials[1] ?? {};
  expect(rheology).toMatchObject({
    zeroShearViscosityPaS: { status: 'measured here' },
    timeConstantS: { status: 'estimated', source: expect.stringMatching(/do not determine it$/) },
    infiniteShearViscosityPaS: { status: 'estimated', source: 'held in the fit' },
    shift: { activationKJPerMol: { status: 'measured here' } },
  });
});

test('a copy stands behind the material under an id and a name of its own', () => {
  const after = takeIntoCopy('phb', 'PHB, fitted', fit)(before);
  expect(after.materials.map(({ id }) => id)).toEqual([before.materials[0]?.id, 'phb', 'phb-2']);
  expect(after.materials[1]).toBe(before.materials[1]);
  expect(after.materials[2]).toMatchObject({ name: 'PHB, fitted', rheology: { model: 'carreauYasuda' } });
  expect(checkProject(after).ok).toBe(true);
});
