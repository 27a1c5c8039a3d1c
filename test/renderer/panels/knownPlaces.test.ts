import { expect, test } from 'vitest';
import { materialCompleteness } from '../../../core/index.ts';
import { knownPlace } from '../../../renderer/panels/granulate/knownPlaces.ts';
import { valueAt } from '../../../renderer/store/path.ts';
import { loadMaterial, materialNames } from '../../helpers/projects.ts';

test('every name that completeness gives has a place, and what is given stands there', () => {
  for (const id of materialNames) {
    const material = loadMaterial(id);
    for (const { missing, doubtful } of materialCompleteness(material)) {
      for (const name of [...missing, ...doubtful]) {
        const place = knownPlace(material, name);
        expect(place, `${id}: ${name}`).not.toBeNull();
        const given = doubtful.includes(name) && !name.endsWith('(not given)');
        if (given) expect(valueAt(material, place ?? []), `${id}: ${name}`).toBeDefined();
      }
    }
  }
});

test('a name that is not known has no place', () => {
  expect(knownPlace(loadMaterial('hdpe'), 'smell')).toBeNull();
});
