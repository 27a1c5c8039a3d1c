import { describe, expect, test } from 'vitest';
import { predict } from '../../../core/prediction/predict.ts';
import { predictionJson } from '../../../core/present/json.ts';
import { present } from '../../../core/present/present.ts';
import { alignColumns, predictionTable } from '../../../core/present/table.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');
const prediction = predict(design, { curvePoints: 5 });
const presentation = present(prediction, design);
const misfit = predict(loadDesign('pla-pellet-misfit'), { curvePoints: 2 });

describe('json', () => {
  const json = predictionJson(prediction);

  test('has the contract’s fields in the contract’s units', () => {
    expect(json.revision).toBe('C');
    expect(json.output.volumeFlow_mm3_s).toBeCloseTo(prediction.output.volumeFlow * 1e9, 3);
    expect(json.output.massFlow_g_min).toBeCloseTo(prediction.output.massFlow * 6e4, 5);
    expect(json.output.screwSpeed_rpm).toBeCloseTo(prediction.output.screwSpeed * 60, 5);
    expect(json.pressure.head_MPa).toBeCloseTo(prediction.output.headPressure / 1e6, 5);
    expect(json.torque_Nm).toBeCloseTo(prediction.drive.torque, 5);
    expect(json.power_W).toBeCloseTo(prediction.drive.power, 5);
    expect(Object.keys(json.residence)).toEqual(['mean_s', 'min_s', 't50_s', 't95_s', 't99_s']);
    expect(Object.keys(json.dead)).toEqual(['fractionOver3', 'fractionOver5', 'spots']);
    expect(json.colour).toMatchObject({ dE00_mean: expect.any(Number), dE00_worst: expect.any(Number) });
    expect(json.colour.srgb).toMatch(/^#[0-9a-f]{6}$/);
    expect(json.print.stepsPerMm3).toBeCloseTo(prediction.print.stepsPerVolume * 1e-9, 3);
    for (const finding of json.findings) {
      expect(Object.keys(finding)).toEqual(
        expect.arrayContaining(['code', 'severity', 'where', 'saw', 'why', 'change']),
      );
    }
  });

  test('survives writing and reading unchanged, unbound capacities as null', () => {
    for (const each of [json, predictionJson(misfit)]) {
      expect(JSON.parse(JSON.stringify(each))).toEqual(each);
      expect(nonFinite(each)).toEqual([]);
    }
    expect(json.capacities.find(({ kind }) => kind === 'starved')?.volumeFlow_mm3_s).toBeNull();
  });
});

describe('figures and curves', () => {
  test('ids are there once, every row has text and help', () => {
    const ids = presentation.groups.flatMap((group) => group.rows.map((row) => `${group.id}/${row.id}`));
    expect(new Set(ids).size).toBe(ids.length);
    for (const row of presentation.groups.flatMap((group) => group.rows)) {
      expect(row.help.length).toBeGreaterThan(5);
      if (row.value !== null) expect(row.text).toMatch(/\d/);
    }
  });

  test('the same number stands in figures, json and prediction', () => {
    const row = presentation.groups.flatMap((group) => group.rows).find(({ id }) => id === 'volumeFlow');
    expect(row?.unit).toBe('mm³/s');
    expect(row?.value).toBeCloseTo(presentation.summaryJson.output.volumeFlow_mm3_s, 3);
  });

  test('every stage states its basis', () => {
    const bases = presentation.groups.flatMap((group) => group.rows.flatMap(({ basis }) => basis ?? []));
    expect(bases.length).toBeGreaterThan(12);
    for (const basis of bases) {
      expect(basis.model).not.toBe('');
      expect(basis.source).not.toBe('');
      expect(basis.range).not.toBe('');
      expect(basis.assumptions.length).toBeGreaterThan(0);
    }
  });

  test('curves are as long in x as in y, finite, and named apart within a plot', () => {
    for (const { id, x, y } of presentation.series) expect(x.length, id).toBe(y.length);
    expect(nonFinite(presentation.series)).toEqual([]);
    const names = presentation.series.map(({ id, name }) => `${id}/${name}`);
    expect(new Set(names).size).toBe(names.length);
    const pressure = presentation.series.find(({ id }) => id === 'pressure');
    expect(pressure?.yUnit).toBe('MPa');
    expect(pressure?.y[pressure.y.length - 1]).toBeCloseTo(prediction.output.headPressure / 1e6, 6);
  });

  test('invented data are called so beside the material', () => {
    const material = presentation.groups.flatMap((group) => group.rows).find(({ id }) => id === 'material');
    expect(material?.text).toContain('invented');
  });
});

describe('terminal', () => {
  test('prints the verdict and what was found, without holes', () => {
    for (const each of [prediction, misfit]) {
      const text = predictionTable(each);
      expect(text).not.toMatch(/NaN|Infinity|undefined/);
      for (const finding of each.findings) expect(text).toContain(finding.saw);
    }
    expect(predictionTable(misfit)).toContain('grain against channel');
  });

  test('columns line up', () => {
    expect(
      alignColumns([
        ['a', 'bb', 'c'],
        ['aaa', 'b', 'c'],
      ]),
    ).toEqual(['a    bb  c', 'aaa  b   c']);
  });
});
