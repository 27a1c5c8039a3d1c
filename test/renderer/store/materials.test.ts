import { describe, expect, test } from 'vitest';
import { checkProject, type Project, parseMaterial } from '../../../core/index.ts';
import { removeValue, setValue } from '../../../renderer/store/edits.ts';
import { materialParts, type PartName } from '../../../renderer/store/materialStarts.ts';
import {
  addAnchor,
  addLaw,
  addMaterial,
  changeMaterial,
  duplicateMaterial,
  freeMaterialId,
  isRemovable,
  removeLaw,
  removeMaterial,
  setColourLaw,
  setPart,
  usersOf,
} from '../../../renderer/store/materials.ts';
import { assetText } from '../../helpers/assets.ts';
import { loadExample, loadMaterial, materialNames } from '../../helpers/projects.ts';

const demo = loadExample('demo');
const [own] = demo.materials;
if (!own) throw new Error('the demo has a material');
const withHdpe = addMaterial(loadMaterial('hdpe'))(demo);
const materialOf = (project: Project, index = 0) => {
  const material = project.materials[index];
  if (!material) throw new Error(`no material ${index}`);
  return material;
};

test('every library material can be added to the demo, twice, and the project can be saved', () => {
  const once = materialNames.reduce((project, id) => addMaterial(loadMaterial(id))(project), demo);
  const twice = materialNames.reduce((project, id) => addMaterial(loadMaterial(id))(project), once);
  expect(twice.materials).toHaveLength(1 + 2 * materialNames.length);
  expect(checkProject(twice).ok).toBe(true);
  expect(freeMaterialId(twice, 'hdpe')).toBe('hdpe-3');
});

test('a copy is a deep one under an id of its own, and the library’s material is not touched', () => {
  const shipped = parseMaterial(assetText('materials/hdpe.json'));
  if (!shipped.ok) throw new Error('not parsed');
  const added = addMaterial(shipped.value)(demo);
  const copied = duplicateMaterial('hdpe', 'HDPE, mine')(added);
  const edited = setValue(['materials', 2, 'meltDensityKgM3', 'value'], 700)(copied);
  expect(copied.materials.map(({ id }) => id)).toEqual([own.id, 'hdpe', 'hdpe-2']);
  expect(materialOf(edited, 1)).toEqual(shipped.value);
  expect(materialOf(edited, 2)).toMatchObject({ name: 'HDPE, mine', meltDensityKgM3: { value: 700 } });
  expect(checkProject(copied).ok).toBe(true);
});

describe('removing', () => {
  test('what a revision runs stays, and so does the last one', () => {
    expect(usersOf(demo, own.id).revisions).toEqual(['A', 'B', 'C']);
    expect(removeMaterial(own.id)(withHdpe)).toBe(withHdpe);
    expect(removeMaterial('hdpe')(withHdpe).materials).toEqual(demo.materials);
  });

  test('what only a bench trial names stays too', () => {
    const moved = {
      ...withHdpe,
      revisions: withHdpe.revisions.map((revision) => ({ ...revision, materialId: 'hdpe' })),
    };
    expect(moved.benchLog.some(({ materialId }) => materialId === own.id)).toBe(true);
    expect(isRemovable(moved, own.id)).toBe(false);
    expect(isRemovable({ ...moved, benchLog: [] }, own.id)).toBe(true);
  });
});

describe('parts that may be there or not', () => {
  test.each(Object.keys(materialParts) as PartName[])('%s comes with start values and goes again', (part) => {
    const without = setPart(own.id, part, false)(demo);
    expect(part in materialOf(without)).toBe(false);
    const back = setPart(own.id, part, true)(without);
    expect(materialOf(back)[part]).toEqual(materialParts[part]);
    for (const project of [without, back]) expect(checkProject(project).ok).toBe(true);
  });
});

describe('aging', () => {
  test('laws are added under free ids, within the working temperatures', () => {
    const two = addLaw(own.id)(addLaw(own.id)(demo));
    const laws = materialOf(two).degradation;
    expect(new Set(laws.map(({ id }) => id)).size).toBe(own.degradation.length + 2);
    expect(laws.at(-1)).toMatchObject({ validFromC: 170, validToC: 200, referenceC: 185 });
    expect(checkProject(two).ok).toBe(true);
  });

  test('removing the law that drives the colour leaves the colour without one; others leave it alone', () => {
    const index = own.degradation.findIndex(({ id }) => id === own.colourLaw);
    expect(index).toBeGreaterThanOrEqual(0);
    const gone = removeLaw(own.id, index)(demo);
    expect('colourLaw' in materialOf(gone)).toBe(false);
    expect(checkProject(gone).ok).toBe(true);
    const other = removeLaw(own.id, index === 0 ? 1 : 0)(demo);
    expect(materialOf(other).colourLaw).toBe(own.colourLaw);
  });

  test('the colour follows another law, or none', () => {
    const [first] = own.degradation;
    expect(materialOf(setColourLaw(own.id, first?.id ?? '')(demo)).colourLaw).toBe(first?.id);
    expect('colourLaw' in materialOf(setColourLaw(own.id, null)(demo))).toBe(false);
  });

  test('a new colour anchor goes on rising, also from nothing', () => {
    let project = changeMaterial(own.id, (material) => ({ ...material, colourAnchors: [] }))(demo);
    for (let n = 0; n < 4; n++) project = addAnchor(own.id)(project);
    expect(materialOf(project).colourAnchors.map(({ extent }) => extent)).toEqual([0, 1, 2, 3]);
    expect(checkProject(addAnchor(own.id)(demo)).ok).toBe(true);
  });
});

test('a value is taken away with its key, and nothing is changed where there is none', () => {
  const path = ['materials', 0, 'meltDensityKgM3', 'low'];
  const low = setValue(path, 1000)(demo);
  expect('low' in materialOf(removeValue(path)(low)).meltDensityKgM3).toBe(false);
  const without = removeValue(path)(low);
  expect(removeValue(path)(without)).toBe(without);
});
