import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { settledMachine } from '../../../core/prediction/heatSettling.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import type { Revision } from '../../../core/project/schema.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { exampleNames, expectOk, loadDesign } from '../../helpers/projects.ts';

const changed = (change: (revision: Revision) => void): Prediction =>
  predict(expectOk(validateDesign(demoC(change), 'C')), { curvePoints: 0 });

/** All heated zones with so many watts, and the nozzle. */
const watts = (zones: number, nozzle: number) =>
  changed((revision) => {
    revision.nozzle.maxPowerW = nozzle;
    for (const zone of revision.barrel.zones) if (zone.kind === 'heated') zone.maxPowerW = zones;
  });

const codes = ({ findings }: Prediction) => findings.map(({ code }) => code);
const saw = ({ findings }: Prediction, code: string) => findings.find((finding) => finding.code === code)?.saw ?? '';

describe('heat at the working point', () => {
  test.each(exampleNames)('%s: what is given and made goes into the product and the losses', (name) => {
    const { heat } = predict(loadDesign(name), { curvePoints: 0 });
    expect(Math.abs(heat.given + heat.dissipation - heat.product - heat.loss)).toBeLessThan(1e-6 * heat.given);
    expect(heat.loss).toBeCloseTo(heat.ambient + heat.coolant + heat.driveEnd, 9);
    expect(heat.zones.reduce((sum, { power }) => sum + power, 0)).toBeCloseTo(heat.given, 6);
    expect(heat.zones.every(({ duty }) => duty !== 'weak')).toBe(true);
    expect(heat.heater).toBeCloseTo(heat.given, 6);
  });

  test('a colder nozzle needs no more watts than a hotter one', () => {
    const needs = [120, 150, 188, 210].map(
      (setTempC) =>
        changed((revision) => {
          revision.nozzle.setTempC = setTempC;
        }).heat.heater,
    );
    for (let i = 1; i < needs.length; i++) expect(needs[i]).toBeGreaterThan(needs[i - 1] - 1e-6);
    expect(needs[3]).toBeLessThan(80);
  });

  test('walls and flow agree: the walls of the working point are those of its load', () => {
    for (const change of [() => {}, (revision: Revision) => void weaken(revision)]) {
      const design = expectOk(validateDesign(demoC(change), 'C'));
      const { machine, converged } = settledMachine(createMachine(design, 8));
      expect(converged).toBe(true);
      const { heat } = predict(design, { curvePoints: 0 });
      heat.zones.forEach(({ reached }, k) => {
        expect(Math.abs(reached - machine.walls.zones[k].reached)).toBeLessThan(0.1);
      });
    }
  });

  const weaken = (revision: Revision) => {
    for (const zone of revision.barrel.zones) if (zone.kind === 'heated') zone.maxPowerW = 12;
  };
});

describe('findings', () => {
  test('a nozzle without watts is named with what it reaches and lacks', () => {
    const prediction = watts(120, 0);
    expect(codes(prediction)).toContain('nozzle-too-weak');
    expect(saw(prediction, 'nozzle-too-weak')).toMatch(
      /reaches 17\d °C of 188 °C; needs .* W, has 0 W, .* W are missing/,
    );
    expect(prediction.nozzle[prediction.nozzle.length - 1].temperature).toBeLessThan(273.15 + 186);
  });

  test('no heated zone stops', () => {
    const prediction = changed((revision) => {
      revision.barrel.zones = revision.barrel.zones.filter(({ kind }) => kind !== 'heated');
    });
    expect(prediction.findings.find(({ code }) => code === 'no-heated-zone')?.severity).toBe('stop');
    expect(prediction.output.volumeFlow).toBe(0);
  });

  test('no watts at all: everything stays cold, every heater is named', () => {
    const prediction = watts(0, 0);
    expect(codes(prediction)).toEqual(
      expect.arrayContaining(['no-heated-zone', 'heater-too-weak', 'nozzle-too-weak', 'not-molten']),
    );
    expect(Math.max(...prediction.axial.wallTemperature)).toBeLessThan(273.15 + 30);
    expect(saw(prediction, 'heater-too-weak')).toMatch(/melting zone: .*metering zone: /);
  });

  test('zones of a watt: the barrel stays far below its set temperature', () => {
    const prediction = watts(1, 1);
    expect(Math.max(...prediction.axial.wallTemperature)).toBeLessThan(273.15 + 60);
    expect(prediction.output.volumeFlow).toBe(0);
  });

  test('a nozzle that the barrel overheats is named', () => {
    const prediction = changed((revision) => {
      revision.nozzle.setTempC = 165;
    });
    expect(saw(prediction, 'zone-overheats')).toMatch(/^nozzle: stands at 17\d °C with its heater off; 165 °C is set/);
  });

  test('a sound machine has none of them', () => {
    const found = codes(changed(() => {}));
    for (const code of ['no-heated-zone', 'heater-too-weak', 'nozzle-too-weak', 'zone-overheats']) {
      expect(found).not.toContain(code);
    }
  });
});
