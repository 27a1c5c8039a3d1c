import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { fitRheology, fittedViscosity } from '../../../../core/material/fit/fitRheology.ts';
import type { FitModel, FitOptions, RheologyFit, RheologyPoint } from '../../../../core/material/fit/fitTypes.ts';
import { viscosityLawOf } from '../../../../core/material/rheology.ts';
import { viscosityAt } from '../../../../core/material/viscosityLaw.ts';
import type { Material } from '../../../../core/project/materialSchema.ts';
import { materialSchema } from '../../../../core/project/materialSchema.ts';
import { pathText } from '../../../../core/result.ts';
import { madeUp } from '../../../helpers/materialArbitraries.ts';
import { codesOf, expectOk, loadMaterial } from '../../../helpers/projects.ts';

type Rheology = Material['rheology'];

/** Seeded normal deviates (Box and Muller 1958). */
function normals(seed: number): () => number {
  const random = xoroshiro128plus(seed);
  // The first numbers of small seeds are alike.
  for (let k = 0; k < 20; k++) random.next();
  const uniform = () => ((random.next() >>> 0) + 0.5) / 2 ** 32;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

const rates = [0.1, 0.5, 2, 10, 50, 200, 1000, 5000];

/** Points of a law with relative noise. */
function pointsOf(
  rheology: Rheology,
  noise = 0,
  { seed = 1, celsius = [180, 200, 220], shear = rates, filler }: Partial<Made> = {},
): RheologyPoint[] {
  const law = viscosityLawOf(filler ? { rheology, filler } : { rheology });
  const draw = normals(seed);
  return celsius.flatMap((at) =>
    shear.map((shearRate) => {
      const viscosity = viscosityAt(law(at + 273.15, 0), shearRate) * Math.exp(noise * draw());
      return { shearRate, temperature: at + 273.15, viscosity };
    }),
  );
}

interface Made {
  readonly seed: number;
  readonly celsius: readonly number[];
  readonly shear: readonly number[];
  readonly filler: NonNullable<Material['filler']>;
}

const shift = { kind: 'arrhenius', referenceC: 200, activationKJPerMol: madeUp(45) } as const;
const exact: Readonly<Record<FitModel, Rheology>> = {
  newtonian: { model: 'newtonian', viscosityPaS: madeUp(350), shift },
  powerLaw: { model: 'powerLaw', consistencyPaSn: madeUp(8000), index: madeUp(0.42), shift },
  carreauYasuda: {
    model: 'carreauYasuda',
    zeroShearViscosityPaS: madeUp(4000),
    infiniteShearViscosityPaS: madeUp(0),
    timeConstantS: madeUp(0.2),
    transition: madeUp(0.9),
    index: madeUp(0.3),
    shift,
  },
  crossWlf: {
    model: 'crossWlf',
    d1PaS: madeUp(2e10),
    d2K: madeUp(373),
    d3KPerPa: madeUp(0),
    a1: madeUp(23),
    a2K: madeUp(51.6),
    criticalStressPa: madeUp(60_000),
    index: madeUp(0.28),
  },
};
const optionsFor = (model: FitModel): FitOptions => ({ referenceTemperature: model === 'crossWlf' ? 373 : 473.15 });
const models = ['newtonian', 'powerLaw', 'carreauYasuda', 'crossWlf'] as const;

const fitOf = (model: FitModel, points: readonly RheologyPoint[], options = optionsFor(model)): RheologyFit =>
  expectOk(fitRheology(model, points, options));
const warned = ({ warnings }: RheologyFit) => warnings.map(({ code }) => code);

/** The number a law was made with. */
function truth(rheology: Rheology, name: string): number {
  const own = (rheology as Record<string, unknown>)[name];
  const moved = 'shift' in rheology ? (rheology.shift as Record<string, unknown>)[name] : undefined;
  return ((own ?? moved) as { value: number }).value;
}

describe.each(models)('%s', (model) => {
  it('comes back from exact points', () => {
    const fit = fitOf(model, pointsOf(exact[model]));
    for (const { name, value } of fit.parameters) {
      expect(Math.abs(value - truth(exact[model], name)), name).toBeLessThanOrEqual(1e-3 * truth(exact[model], name));
    }
    expect(fit.converged).toBe(true);
    expect(warned(fit)).toEqual([]);
    expect(fit.rSquared).toBeGreaterThan(0.999999);
  });

  it('comes back from noisy points, inside its bands as often as 95 % bands should', () => {
    const trials = model === 'carreauYasuda' || model === 'crossWlf' ? 5 : 20;
    let inside = 0;
    let all = 0;
    for (let seed = 1; seed <= trials; seed++) {
      const fit = fitOf(model, pointsOf(exact[model], 0.05, { seed }));
      expect(Math.abs(fit.scatter / 0.05 - 1), `scatter of seed ${seed}`).toBeLessThan(0.45);
      for (const { name, low, high, fitted } of fit.parameters) {
        if (!fitted) continue;
        all++;
        if (low <= truth(exact[model], name) && truth(exact[model], name) <= high) inside++;
      }
    }
    expect(inside / all).toBeGreaterThan(0.85);
  });

  it('is stored as a good rheology whose curve is that of the fit', () => {
    const fit = fitOf(model, pointsOf(exact[model], 0.03));
    const material = { ...loadMaterial('pla'), rheology: fit.rheology, rheologyRange: fit.range };
    expect(materialSchema.safeParse(material).error).toBeUndefined();
    const law = viscosityLawOf(fit)(490, 0);
    const { value, low, high } = fittedViscosity(fit, 30, 490);
    expect(Math.abs(viscosityAt(law, 30) / value - 1)).toBeLessThan(1e-4);
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
    expect(JSON.stringify(fit.rheology)).toMatch(/fitted to 24 points/);
    expect(fit.range).toMatchObject({ fromC: 180, toC: 220, shearFromPerS: 0.1, shearToPerS: 5000 });
  });
});

describe('bands', () => {
  it('of a straight line are those of the textbook', () => {
    // Power law at one temperature is a straight line in logarithms: slope n - 1, scatter s, slope error s/sqrt(Sxx).
    const points = pointsOf(exact.powerLaw, 0.05, { celsius: [200] });
    const fit = fitOf('powerLaw', points);
    const x = points.map(({ shearRate }) => Math.log(shearRate));
    const y = points.map(({ viscosity }) => Math.log(viscosity));
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    const sum = (f: (i: number) => number) => x.reduce((total, _, i) => total + f(i), 0);
    const [mx, my] = [mean(x), mean(y)];
    const sxx = sum((i) => ((x[i] ?? 0) - mx) ** 2);
    const slope = sum((i) => ((x[i] ?? 0) - mx) * ((y[i] ?? 0) - my)) / sxx;
    const rest = sum((i) => ((y[i] ?? 0) - my - slope * ((x[i] ?? 0) - mx)) ** 2);
    const scatter = Math.sqrt(rest / (x.length - 2));
    const index = fit.parameters.find(({ name }) => name === 'index');
    expect(index?.value).toBeCloseTo(slope + 1, 4);
    // A power law is held level below 1e-3 1/s, which shows in the fifth digit at 0.1 1/s.
    expect(fit.scatter).toBeCloseTo(scatter, 5);
    // Student's t of 6 degrees of freedom, two-sided 95 %: 2.4469.
    expect((index?.high ?? 0) - (index?.value ?? 0)).toBeCloseTo((2.4469 * scatter) / Math.sqrt(sxx), 4);
    const at = Math.log(30);
    const half = 2.4469 * scatter * Math.sqrt(1 / x.length + (at - mx) ** 2 / sxx);
    const { value, high } = fittedViscosity(fit, 30, 473.15);
    expect(Math.log(high / value)).toBeCloseTo(half, 4);
    expect(fit.covariance[1]?.[1]).toBeCloseTo(scatter ** 2 / sxx, 7);
  });

  it('open towards what was not measured', () => {
    const fit = fitOf('carreauYasuda', pointsOf(exact.carreauYasuda, 0.05));
    const width = (rate: number) => {
      const { low, high } = fittedViscosity(fit, rate, 473.15);
      return high / low;
    };
    expect(width(1e5)).toBeGreaterThan(2 * (width(50) - 1) + 1);
  });
});

describe('what the points cannot say', () => {
  it('a plateau beyond the measured rates', () => {
    const fit = fitOf('carreauYasuda', pointsOf(exact.carreauYasuda, 0.03, { shear: [200, 500, 1000, 2000, 5000] }));
    const warning = fit.warnings.find(({ code }) => code === 'not-determined');
    expect(warning?.parameters).toContain('zeroShearViscosityPaS');
    expect(warning?.message).toMatch(/viscosity at rest/);
  });

  it('the move with temperature from one temperature', () => {
    const single = { celsius: [200] };
    const power = fitOf('powerLaw', pointsOf(exact.powerLaw, 0.02, single));
    expect(warned(power)).toEqual(['one-temperature']);
    expect(power.rheology).toMatchObject({ shift: { kind: 'none' } });
    const cross = fitOf('crossWlf', pointsOf(exact.crossWlf, 0.02, single));
    expect(cross.parameters.find(({ name }) => name === 'a1')).toMatchObject({ fitted: false, determined: false });
    const law = viscosityLawOf({ rheology: exact.crossWlf })(473.15, 0);
    expect(fittedViscosity(cross, 100, 473.15).value / viscosityAt(law, 100)).toBeCloseTo(1, 1);
  });

  it('thinning from a narrow span of shear rates', () => {
    expect(warned(fitOf('powerLaw', pointsOf(exact.powerLaw, 0.02, { shear: [100, 150, 200] })))).toContain(
      'narrow-shear',
    );
  });

  it('a law of the wrong shape, and a reading far off', () => {
    expect(warned(fitOf('newtonian', pointsOf(exact.powerLaw)))).toContain('poor-fit');
    const points = pointsOf(exact.powerLaw, 0.01).map((point, i) =>
      i === 5 ? { ...point, viscosity: 3 * point.viscosity, line: 7 } : point,
    );
    const fit = fitOf('powerLaw', points);
    expect(fit.warnings.find(({ code }) => code === 'outliers')?.message).toMatch(/line 7/);
    expect(fit.residuals.filter(({ outlier }) => outlier)).toHaveLength(1);
  });
});

describe('readings given again at their own place', () => {
  it('do not narrow the bands, and are told', () => {
    const once = [1, 3, 10, 30, 100].map((shearRate, i) => ({
      shearRate,
      temperature: 453,
      viscosity: 1000 * shearRate ** -0.4 * (i % 2 === 0 ? 1.05 : 0.95),
    }));
    const single = expectOk(fitRheology('powerLaw', once, { shift: 'none' }));
    const thrice = expectOk(fitRheology('powerLaw', [...once, ...once, ...once], { shift: 'none' }));
    expect(thrice.warnings.map(({ code }) => code)).toContain('repeated-points');
    expect(single.warnings.map(({ code }) => code)).not.toContain('repeated-points');
    thrice.parameters.forEach(({ low, high }, i) => {
      expect(low / single.parameters[i].low).toBeCloseTo(1, 4);
      expect(high / single.parameters[i].high).toBeCloseTo(1, 4);
    });
  });
});

describe('nonsense', () => {
  it('is refused point by point', () => {
    const points = [
      { shearRate: 10, temperature: 473, viscosity: 100 },
      { shearRate: -10, temperature: 473, viscosity: 100, line: 3 },
      { shearRate: 10, temperature: 20, viscosity: Number.NaN },
    ];
    const result = fitRheology('powerLaw', points);
    expect(result.ok ? [] : result.issues.map(({ path }) => pathText(path))).toEqual([
      'points[1].shearRate',
      'points[2].temperature',
      'points[2].viscosity',
    ]);
    expect(result.ok ? '' : result.issues[0]?.message).toMatch(/line 3/);
  });

  it('too few points or shear rates', () => {
    expect(codesOf(fitRheology('powerLaw', []))).toEqual(['too-few-points']);
    expect(codesOf(fitRheology('powerLaw', pointsOf(exact.powerLaw, 0, { celsius: [200], shear: [1, 2] })))).toEqual([
      'too-few-points',
    ]);
    expect(codesOf(fitRheology('powerLaw', pointsOf(exact.powerLaw, 0, { shear: [10, 10] })))).toEqual([
      'too-few-rates',
    ]);
  });

  it('a melt that thickens when hot', () => {
    const upside = pointsOf(exact.newtonian).map((point) => ({ ...point, viscosity: 1e5 / point.viscosity }));
    const result = fitRheology('newtonian', upside);
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'fit-out-of-range' }] });
    expect(result.ok ? '' : result.issues[0]?.message).toMatch(/activationKJPerMol/);
  });
});

describe('choices', () => {
  it('an exponential move, a held transition, a held A2', () => {
    const warm = { kind: 'exponential', referenceC: 200, coefficientPerK: madeUp(0.018) } as const;
    const power = fitOf('powerLaw', pointsOf({ ...exact.powerLaw, shift: warm } as Rheology), { shift: 'exponential' });
    expect(power.parameters.find(({ name }) => name === 'coefficientPerK')?.value).toBeCloseTo(0.018, 5);
    const carreau = fitOf('carreauYasuda', pointsOf(exact.carreauYasuda), {
      referenceTemperature: 473.15,
      transition: 0.9,
    });
    expect(carreau.parameters.find(({ name }) => name === 'transition')).toMatchObject({ value: 0.9, fitted: false });
    expect(carreau.parameters.find(({ name }) => name === 'index')?.value).toBeCloseTo(0.3, 3);
  });

  it('points of a filled melt give the law of the melt alone', () => {
    const filler = { volumeFraction: madeUp(0.17), maxPacking: madeUp(0.55) };
    // Maron and Pierce 1956: (1 - 0.17/0.55)^-2 = 2.0949.
    const fit = fitOf('powerLaw', pointsOf(exact.powerLaw, 0, { filler }), {
      referenceTemperature: 473.15,
      thickening: 2.0949,
    });
    expect(fit.parameters.find(({ name }) => name === 'consistencyPaSn')?.value).toBeCloseTo(8000, -1);
    const filled = viscosityLawOf({ rheology: exact.powerLaw, filler })(473.15, 0);
    expect(fittedViscosity(fit, 30, 473.15).value / viscosityAt(filled, 30)).toBeCloseTo(1, 4);
  });
});
