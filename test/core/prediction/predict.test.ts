import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import { predictionJson } from '../../../core/present/json.ts';
import type { Revision } from '../../../core/project/schema.ts';
import { anyDesign, pinned } from '../../helpers/arbitraries.ts';
import { demoC, edgeProjects } from '../../helpers/edgeProjects.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { exampleNames, expectOk, loadDesign, loadExample } from '../../helpers/projects.ts';

/** Capacities alone may be without bound. */
const unbound = /^capacities\.\d+\.(volumeFlow|reserve)$/;
const quick = { curvePoints: 0 };

/** The demo's revision C, changed; without the curve. */
const changed = (change: (revision: Revision, project: ReturnType<typeof loadExample>) => void): Prediction =>
  predict(expectOk(validateDesign(demoC(change), 'C')), quick);

/** The demo with a Newtonian melt whose viscosity does not know its temperature. */
const newtonian = (change: (revision: Revision, project: ReturnType<typeof loadExample>) => void, viscosity = 800) =>
  changed((revision, project) => {
    for (const material of project.materials) {
      material.rheology = {
        model: 'newtonian',
        viscosityPaS: { value: viscosity, source: 'made up for a test', status: 'invented' },
        shift: { kind: 'none' },
      };
      delete material.filler;
    }
    revision.drive.motorCurve = [
      { speedRpm: 0, torqueNm: 900 },
      { speedRpm: 20000, torqueNm: 900 },
    ];
    change(revision, project);
  });

describe('every example', () => {
  for (const name of exampleNames) {
    for (const { id } of loadExample(name).revisions) {
      test(`${name} ${id}: finite, mass in balance, mean residence = melt volume over flow`, () => {
        const prediction = predict(loadDesign(name, id), { curvePoints: 4 });
        expect(nonFinite(prediction, unbound)).toEqual([]);
        expect(nonFinite(predictionJson(prediction))).toEqual([]);
        expect(prediction.converged).toBe(true);
        const { output, residence } = prediction;
        const volume = residence.parts.reduce((sum, part) => sum + part.volume, 0);
        if (output.volumeFlow > 0) {
          expect(Math.abs(residence.mean / (volume / output.volumeFlow) - 1)).toBeLessThan(1e-6);
        }
        const least = Math.min(...prediction.capacities.map((capacity) => capacity.volumeFlow));
        expect(output.volumeFlow).toBeLessThanOrEqual(least * (1 + 1e-6));
      });
    }
  }

  test('pellets that do not fit are refused with the reason', () => {
    const prediction = predict(loadDesign('pla-pellet-misfit'), quick);
    expect(prediction.limit).toBe('grainFit');
    expect(prediction.output.volumeFlow).toBe(0);
    const finding = prediction.findings.find(({ code }) => code === 'grain-fit');
    expect(finding?.severity).toBe('stop');
    expect(finding?.value ?? 1).toBeLessThan(finding?.limit ?? 0);
  });
});

describe('any design', () => {
  test('gives finite numbers and never throws', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const prediction = predict(design, { curvePoints: 2, stationsPerTurn: 4 });
        expect(nonFinite(prediction, unbound)).toEqual([]);
        expect(nonFinite(predictionJson(prediction))).toEqual([]);
        expect(prediction.output.volumeFlow).toBeGreaterThanOrEqual(0);
        expect(prediction.drive.torque).toBeGreaterThanOrEqual(0);
      }),
      pinned(25),
    );
  });

  test.each(edgeProjects)('at the edge: %s', (_, project) => {
    const design = validateDesign(project, project.activeRevision);
    if (!design.ok) return;
    const prediction = predict(design.value, { curvePoints: 2 });
    expect(nonFinite(prediction, unbound)).toEqual([]);
  });
});

describe('what must hold between predictions', () => {
  let base: Prediction;
  beforeAll(() => {
    base = newtonian(() => {});
  });

  test('Newtonian: flow in proportion to speed, head pressure too, and the same per turn whatever the viscosity', () => {
    const fast = newtonian((_, project) => {
      project.process.screwSpeedRpm *= 1.5;
    });
    expect(base.limit).toBe('pumping');
    // not exactly: faster melt is molten later, and a faster film makes more heat
    expect(Math.abs(fast.output.volumeFlow / base.output.volumeFlow / 1.5 - 1)).toBeLessThan(0.05);
    expect(Math.abs(fast.output.headPressure / base.output.headPressure / 1.5 - 1)).toBeLessThan(0.05);
    const thick = newtonian(() => {}, 1600);
    expect(Math.abs(thick.output.volumeFlow / base.output.volumeFlow - 1)).toBeLessThan(0.02);
    expect(Math.abs(thick.output.headPressure / base.output.headPressure / 2 - 1)).toBeLessThan(0.03);
  });

  test('more back pressure, less flow', () => {
    const flows = [0, 1, 2, 4].map(
      (pressure) =>
        newtonian((_, project) => {
          project.process.backPressureMPa = pressure;
        }).output.volumeFlow,
    );
    for (let i = 1; i < flows.length; i++) expect(flows[i]).toBeLessThan(flows[i - 1]);
  });

  test('smaller orifice, more head pressure and less flow', () => {
    const small = changed((revision) => {
      const land = revision.nozzle.segments[revision.nozzle.segments.length - 1];
      land.startDiameterMm *= 0.9;
      land.endDiameterMm *= 0.9;
    });
    const now = changed(() => {});
    expect(small.output.headPressure).toBeGreaterThan(now.output.headPressure);
    expect(small.output.volumeFlow).toBeLessThan(now.output.volumeFlow);
  });

  test('no clearance, no leak; worn clearance, less flow', () => {
    const tight = changed((revision) => {
      revision.screw.radialClearanceMm = 0;
    });
    const worn = changed((revision) => {
      revision.screw.radialClearanceMm = 0.2;
    });
    expect(tight.output.leakFlow).toBe(0);
    expect(tight.drive.torqueClearance).toBe(0);
    expect(worn.output.volumeFlow).toBeLessThan(tight.output.volumeFlow);
    expect(worn.output.leakFlow).toBeGreaterThan(0);
  });

  test('refining the stations changes the output by less than a thousandth', () => {
    const design = loadDesign('demo', 'C');
    const coarse = predict(design, { ...quick, stationsPerTurn: 8 }).output.volumeFlow;
    const fine = predict(design, { ...quick, stationsPerTurn: 32 }).output.volumeFlow;
    expect(Math.abs(coarse / fine - 1)).toBeLessThan(1e-3);
  });

  test('starved feeding gives what the feeder gives, with part of the screw empty', () => {
    const starved = changed((_, project) => {
      project.process.feed = { kind: 'starved', rateGPerMin: 1 };
    });
    expect(starved.limit).toBe('starved');
    expect(starved.output.massFlow * 60_000).toBeCloseTo(1, 6);
    const full = changed(() => {});
    expect(starved.output.filledLength).toBeLessThan(full.output.filledLength);
    expect(starved.output.headPressure).toBeLessThan(full.output.headPressure);
    expect(Math.min(...starved.axial.fill.filter((_, i) => starved.axial.molten[i] === 1))).toBeLessThan(1);
  });

  test('a weak motor holds a lower speed, at exactly the torque it may give', () => {
    const weak = changed((revision) => {
      for (const point of revision.drive.motorCurve) point.torqueNm *= 0.6;
    });
    expect(weak.limit).toBe('torque');
    expect(weak.output.screwSpeed).toBeLessThan(changed(() => {}).output.screwSpeed);
    expect(weak.drive.torque / weak.drive.torqueUsable).toBeGreaterThan(0.97);
    expect(weak.drive.torque / weak.drive.torqueUsable).toBeLessThan(1.005);
    expect(weak.findings.map(({ code }) => code)).toContain('over-torque');
  });

  test('pressure grows to the head’s where the screw ends, and nozzle drops add up to it', () => {
    const { axial, output, nozzle, stations } = changed(() => {});
    expect(axial.pressure[stations.count - 1]).toBeCloseTo(output.headPressure, 3);
    expect(nozzle.reduce((sum, drop) => sum + drop.pressureDrop, 0)).toBeCloseTo(output.headPressure, 3);
  });

  test('power of the screw is heat of the melt and nothing else, since all pressure is spent in the nozzle', () => {
    const { drive, heat } = changed(() => {});
    expect(Math.abs(heat.dissipation / drive.power - 1)).toBeLessThan(0.01);
  });
});

describe('blocked nozzle', () => {
  test('asks for more torque than running', () => {
    const { drive } = changed(() => {});
    expect(drive.blockedTorque).toBeGreaterThan(drive.torque);
    expect(drive.blockedPressure).toBeGreaterThan(0);
  });

  test('a thinner melt or a wider orifice lets the pressure go sooner', () => {
    const now = changed(() => {}).print.pressureTime;
    const wide = changed((revision) => {
      const land = revision.nozzle.segments[revision.nozzle.segments.length - 1];
      land.startDiameterMm *= 1.3;
      land.endDiameterMm *= 1.3;
    }).print.pressureTime;
    expect(now).toBeGreaterThan(0);
    expect(wide).toBeLessThan(now);
  });
});

describe('curve', () => {
  test('agrees with the working point at the set speed, and the speed for the demand meets it', () => {
    const design = loadDesign('demo', 'C');
    const whole = predict(design, { curvePoints: 24 });
    const { screwSpeed, volumeFlow } = whole.curve;
    const i = screwSpeed.findIndex((speed) => speed >= whole.output.screwSpeed);
    expect(volumeFlow[i - 1]).toBeLessThanOrEqual(whole.output.volumeFlow * 1.001);
    expect(volumeFlow[i]).toBeGreaterThanOrEqual(whole.output.volumeFlow * 0.999);
    const at = whole.print.speedForDemand ?? 0;
    const met = changed((_, project) => {
      project.process.screwSpeedRpm = at * 60;
    });
    expect(Math.abs(met.output.volumeFlow / whole.print.demand - 1)).toBeLessThan(0.02);
  });

  test('does not depend on where it is begun', () => {
    const design = loadDesign('hdpe-regrind');
    const { curve } = predict(design, { curvePoints: 6 });
    curve.screwSpeed.forEach((speed, i) => {
      const project = loadExample('hdpe-regrind');
      project.process.screwSpeedRpm = speed * 60;
      const alone = predict(expectOk(validateDesign(project, project.activeRevision)), quick);
      if (alone.limit !== 'torque') {
        // so few points lie far apart, and the curve foresees its walls from one to the next
        expect(Math.abs(alone.output.volumeFlow / curve.volumeFlow[i] - 1)).toBeLessThan(0.0075);
      }
    });
  });
});

test('progress rises', () => {
  const seen: number[] = [];
  predict(loadDesign('demo'), quick, (done) => seen.push(done));
  expect(seen.length).toBeGreaterThan(2);
  expect(seen).toEqual([...seen].sort((a, b) => a - b));
});
