import { describe, expect, test } from 'vitest';
import { predict } from '../../../core/prediction/predict.ts';
import type { DeadSpot, Finding } from '../../../core/prediction/types.ts';
import { predictionJson } from '../../../core/present/json.ts';
import { present } from '../../../core/present/present.ts';
import { alignColumns, predictionTable } from '../../../core/present/table.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');
const prediction = predict(design, { curvePoints: 5 });
const presentation = present(prediction, design);
const misfit = predict(loadDesign('pla-pellet-misfit'), { curvePoints: 2 });

const blankFinding: Finding = {
  code: 'made-up',
  severity: 'note',
  where: 'here',
  z: null,
  saw: 'Saw.',
  why: 'Why.',
  change: 'Change.',
  value: null,
  limit: null,
  unit: '',
};

const spot: DeadSpot = {
  part: 'tip',
  where: 'ahead of the tip',
  z: 0.162,
  zFrom: 0.161,
  zTo: 0.163,
  r: 0.001,
  volume: 5e-9,
  meanAge: 300,
  cause: 'tip',
  remedy: 'Point it.',
  dE00: 2.5,
  srgb: '#ccbbaa',
};

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
    expect(Object.keys(json.residence)).toEqual(
      expect.arrayContaining(['mean_s', 'min_s', 't50_s', 't95_s', 't99_s', 'washout99_s', 'washout999_s']),
    );
    expect(Object.keys(json.dead)).toEqual(expect.arrayContaining(['fractionOver3', 'fractionOver5', 'spots']));
    expect(json.colour).toMatchObject({ dE00_mean: expect.any(Number), dE00_worst: expect.any(Number) });
    expect(json.colour.srgb).toMatch(/^#[0-9a-f]{6}$/);
    expect(json.colour.distribution).toHaveLength(5);
    expect(json.colour.origin.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 3);
    expect(json.colour.range?.dE00_mean[0]).toBeLessThan(json.colour.dE00_mean ?? 0);
    expect(json.colour.laws.filter(({ drivesColour }) => drivesColour)).toHaveLength(1);
    expect(json.print.stepsPerMm3).toBeCloseTo(prediction.print.stepsPerVolume * 1e-9, 3);
    for (const finding of json.findings) {
      expect(Object.keys(finding)).toEqual(
        expect.arrayContaining(['code', 'severity', 'where', 'saw', 'why', 'change']),
      );
    }
  });

  test('says what it rests on, for every stage', () => {
    expect(json.fields).toBe('formula');
    expect(json.fieldsNote).toMatch(/corners, tip and nozzle are not looked into/);
    const { output, drive, heat, residence, dead, colour, print } = json;
    const stages = [output, drive, heat, residence, dead, colour, print, ...json.capacities];
    for (const { basis } of stages) {
      expect(Object.keys(basis).sort()).toEqual(['assumptions', 'doubt', 'model', 'range', 'source']);
    }
    expect(output.basis).toEqual(prediction.output.basis);
  });

  test('has what the window shows of drive, heat, residence and print', () => {
    expect(json.drive.torqueLand_Nm).toBeCloseTo(prediction.drive.torqueClearance, 5);
    expect(json.drive.rootShear_MPa).toBeCloseTo(prediction.drive.rootShear / 1e6, 4);
    expect(json.drive.thrust_N).toBeCloseTo(prediction.drive.thrust, 2);
    expect(json.heat.loss_W).toBeCloseTo(prediction.heat.loss, 4);
    expect(json.heat.ambient_W + json.heat.coolant_W + json.heat.driveEnd_W).toBeCloseTo(json.heat.loss_W, 3);
    expect(json.heat.zones.map(({ reached_C }) => reached_C)).toEqual(
      prediction.heat.zones.map(({ reached }) => expect.closeTo(reached - 273.15, 3)),
    );
    expect(json.residence.parts.map(({ part }) => part)).toEqual(prediction.residence.parts.map(({ part }) => part));
    expect(json.residence.washout999_s).toBeCloseTo(prediction.residence.washout999, 2);
    expect(json.print.meanDemand_mm3_s).toBeCloseTo(prediction.print.meanDemand * 1e9, 4);
    expect(json.print.passesPerWall).toBe(prediction.print.passesPerWall);
  });

  test('says of project and material whether they are invented', () => {
    const named = predictionJson(prediction, design);
    expect(named.projectInvented).toBe(true);
    expect(named.material).toEqual({ id: design.material.id, name: design.material.name, invented: true });
    expect(predictionJson(prediction, { ...design, invented: false }).projectInvented).toBe(false);
    expect(json.projectInvented).toBeNull();
  });

  test('states findings in display units', () => {
    const made = { ...blankFinding, value: 2e6, limit: 1e6, unit: 'Pa' };
    const torque = { ...blankFinding, value: 3, unit: 'N m' };
    const hot = { ...blankFinding, value: 473.15, unit: 'K' };
    const { findings } = predictionJson({ ...prediction, findings: [made, torque, hot] });
    expect(findings.map(({ value, limit, unit }) => [value, limit, unit])).toEqual([
      [2, 1, 'MPa'],
      [3, null, 'N·m'],
      [200, null, '°C'],
    ]);
  });

  test('has every field of a dead spot', () => {
    const dead = { ...prediction.dead, spots: [spot] };
    expect(predictionJson({ ...prediction, dead }).dead.spots).toEqual([
      {
        part: 'tip',
        where: 'ahead of the tip',
        z_mm: 162,
        zFrom_mm: 161,
        zTo_mm: 163,
        r_mm: 1,
        volume_mm3: 5,
        meanAge_s: 300,
        cause: 'tip',
        remedy: 'Point it.',
        dE00: 2.5,
        srgb: '#ccbbaa',
      },
    ]);
  });

  test('has no number for what melt would do where nothing flows', () => {
    const still = predictionJson({ ...prediction, output: { ...prediction.output, flows: false } });
    expect(still.flows).toBe(false);
    expect([still.residence.mean_s, still.dead.fractionOver3, still.torque_Nm, still.print.stepsPerMm3]).toEqual([
      null,
      null,
      null,
      null,
    ]);
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

  test('says what is invented, what it rests on and what is doubtful', () => {
    const doubtful = { ...prediction.output, basis: { ...prediction.output.basis, doubt: 'The channel is deep.' } };
    const text = predictionTable({ ...prediction, output: doubtful }, design);
    expect(text).toContain('This project is invented');
    expect(text).toContain('Invented material data');
    expect(text).toContain('Formula estimate: corners, tip and nozzle are not looked into.');
    expect(text).toContain(`Output: ${prediction.output.basis.model}.`);
    expect(text).toContain('Doubtful here: The channel is deep.');
    expect(predictionTable(prediction, { ...design, invented: false })).not.toContain('This project is invented');
  });

  test('lists dead spots with place, volume, age, cause and remedy', () => {
    const text = predictionTable({ ...prediction, dead: { ...prediction.dead, spots: [spot] } });
    expect(text).toContain('1  ahead of the tip: 5 mm³, mean age 300 s, cause: tip');
    expect(text).toContain('Point it.');
  });

  test('shows no number for what melt would do where nothing flows', () => {
    const text = predictionTable({ ...prediction, output: { ...prediction.output, flows: false } });
    expect(text).toMatch(/Half has left by +–/);
    expect(text).toMatch(/Leak over the flight +–/);
    expect(text).toMatch(/Thrust +–/);
    expect(text).toContain('Nothing flows');
  });

  test('takes a unit that suits a small number', () => {
    const output = { ...prediction.output, headPressure: 4321 };
    const drive = { ...prediction.drive, torque: 0.0123, blockedPressure: 12.3 };
    const text = predictionTable({ ...prediction, output, drive });
    expect(text).toMatch(/Head pressure +4\.32 kPa/);
    expect(text).toMatch(/Pressure when blocked +12\.3 Pa/);
    expect(text).toMatch(/Torque +12\.3 mN·m/);
  });

  test('the land’s part of the torque stands under the torque', () => {
    const drive = presentation.groups.find(({ id }) => id === 'drive')?.rows.map(({ id }) => id);
    expect(drive?.slice(0, 3)).toEqual(['torque', 'torqueClearance', 'torqueUsable']);
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
