import { bench, describe } from 'vitest';
import { validateDesign } from '../../core/design/validate.ts';
import { createFieldCache, type FieldCache } from '../../core/path/fieldCache.ts';
import { predict } from '../../core/prediction/predict.ts';
import { changedDemo, expectOk, loadDesign } from '../helpers/projects.ts';

const solved = { fields: 'solved' } as const;
const once = { iterations: 3, warmupIterations: 1, time: 0, warmupTime: 0 };

/** A cache that knows the demo's revision already. */
function warmed(revision: string): FieldCache {
  const cache = createFieldCache();
  predict(loadDesign('demo', revision), solved, undefined, cache);
  return cache;
}

/** The revision a little hotter and faster: the cross-sections stay. */
function nudged(revision: string) {
  const project = changedDemo((changed) => {
    changed.process.screwSpeedRpm *= 1.03;
    for (const each of changed.revisions) each.nozzle.setTempC += 1;
  });
  return expectOk(validateDesign(project, revision));
}

describe('whole prediction with solved fields: must 10 s, aim 4 s', () => {
  for (const revision of ['A', 'B', 'C']) {
    const design = loadDesign('demo', revision);
    bench(`demo ${revision}, cold`, () => void predict(design, solved, undefined, createFieldCache()), once);
  }
});

describe('after an edit that leaves cross-sections alone: must 300 ms, aim 150 ms', () => {
  for (const revision of ['A', 'C']) {
    const cache = warmed(revision);
    const design = nudged(revision);
    bench(`demo ${revision}`, () => void predict(design, solved, undefined, cache), { ...once, iterations: 10 });
  }
});

describe('first answer by formulas: must 100 ms, aim 50 ms', () => {
  const design = loadDesign('demo', 'C');
  bench('demo C, without the curve', () => void predict(design, { curvePoints: 0 }), { ...once, iterations: 10 });
});
