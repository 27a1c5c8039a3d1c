import { describe, expect, test } from 'vitest';
import type { FindingContext } from '../../../core/findings/context.ts';
import { printRules } from '../../../core/findings/printRules.ts';
import { printStage, printSupply } from '../../../core/prediction/printStage.ts';
import { meltVolumes } from '../../../core/prediction/residenceStage.ts';
import type { PrintMatch } from '../../../core/prediction/types.ts';
import { contextOf, said, withDesign, withResult } from './machineContext.ts';

const demo = contextOf('demo', 'C');
const wax = contextOf('wax-head');
const rule = (code: string, context: FindingContext) => said(printRules, code, context);
const printed = (change: Partial<PrintMatch>) => withResult(demo, 'print', change);
const { print } = demo.prediction;

/** A context whose print side stands on the whole melt. */
function whole(context: FindingContext): PrintMatch {
  const { machine, driven, design, prediction } = context;
  const volumes = meltVolumes(machine, driven.point.state, prediction.geometry);
  return printStage(design, printSupply(machine, driven, volumes, prediction.heat.outlet), prediction.curve);
}

describe('from a working point', () => {
  test('melt in the channel stores more than the head alone, leaks back, and stands where it is molten', () => {
    const full = whole(demo);
    expect(full.release.volume).toBeGreaterThan(print.release.volume);
    expect(full.release.nozzleShare).toBeLessThan(1);
    expect(full.release.nozzleShare).toBeGreaterThan(0.3);
    expect(full.drip.column).toBeLessThan(demo.design.barrel.length + 0.05);
    expect(full.demand).toBe(print.demand);
    expect(full.passesPerWall).toBe(print.passesPerWall);
  });

  test('the print side is taken at the outlet’s real temperature, not the set one', () => {
    const { machine, driven, design, prediction } = wax;
    const volumes = meltVolumes(machine, driven.point.state, prediction.geometry);
    const at = (outlet: number) => printStage(design, printSupply(machine, driven, volumes, outlet), prediction.curve);
    expect(at(345).outlet).toBe(345);
    expect(at(345).drip.viscosity).toBeLessThan(at(340).drip.viscosity);
    expect(at(345).drip.rate).toBeGreaterThan(at(340).drip.rate);
  });

  test('wax drips and breaks into drops', () => {
    const context = withResult(wax, 'print', whole(wax));
    expect(rule('drips', context)).toMatchObject({ severity: 'warn', unit: 'm³/s' });
    expect(rule('strand-breaks', context)).not.toBeNull();
  });
});

describe('after a stop', () => {
  test('ooze is told from 5 mm of line on, with the turn back', () => {
    const ooze = (length: number) =>
      printed({ release: { ...print.release, ooze: { value: length * print.line.area, low: 0, high: 1 } } });
    expect(rule('oozes', ooze(4.9e-3))).toBeNull();
    expect(rule('oozes', ooze(5.1e-3))?.change).toContain('Turn back');
    expect(rule('oozes', withResult(ooze(1), 'output', { flows: false }))).toBeNull();
  });

  test('dripping counts against the demand; a skin that holds ends it', () => {
    const drip = (change: Partial<PrintMatch['drip']>) => printed({ drip: { ...print.drip, ...change } });
    expect(rule('drips', drip({ drips: true, rate: 0.0099 * print.demand }))).toBeNull();
    expect(rule('drips', drip({ drips: true, rate: 0.0101 * print.demand }))?.severity).toBe('warn');
    expect(rule('drips', drip({ drips: false, rate: print.demand }))).toBeNull();
    expect(rule('drips', drip({ drips: null, held: null, rate: print.demand }))?.saw).toContain('unknown');
  });
});

describe('free melt', () => {
  test.each([
    ['strand', null],
    ['sags', 'note'],
    ['drips', 'warn'],
  ] as const)('%s', (verdict, severity) => {
    const strand = { ...print.strand, verdict, number: 5, breakupTime: 0.1, gapTime: 0.02 };
    expect(rule('strand-breaks', printed({ strand }))?.severity ?? null).toBe(severity);
  });

  test('what cannot be told is not said', () => {
    const strand = { ...print.strand, verdict: null, number: null, breakupTime: null };
    expect(rule('strand-breaks', printed({ strand }))).toBeNull();
  });
});

describe('setting', () => {
  test('slow from 60 s on; never where the air is above setting', () => {
    const cooling = (change: Partial<PrintMatch['cooling']>) => printed({ cooling: { ...print.cooling, ...change } });
    expect(rule('sets-slowly', cooling({ setTime: 59.9, reason: null }))).toBeNull();
    expect(rule('sets-slowly', cooling({ setTime: 60.1, reason: null, coefficientKnown: false }))?.saw).toContain(
      'guess',
    );
    expect(rule('sets-slowly', cooling({ setTime: 60.1, reason: null, coefficientKnown: true }))?.saw).not.toContain(
      'guess',
    );
    expect(rule('sets-slowly', cooling({ setTime: null, reason: 'neverSets' }))?.severity).toBe('warn');
    expect(rule('sets-slowly', cooling({ setTime: null, reason: 'unknown' }))).toBeNull();
  });

  test('stress: silent below half the strength and where it cannot be told; advice names a temperature', () => {
    const crack = (change: Partial<PrintMatch['crack']>) => printed({ crack: { ...print.crack, ...change } });
    expect(rule('cooling-stress', crack({ verdict: 'low' }))).toBeNull();
    expect(rule('cooling-stress', crack({ verdict: null }))).toBeNull();
    expect(rule('cooling-stress', crack({ verdict: 'risky', share: 0.6 }))?.severity).toBe('note');
    const over = rule('cooling-stress', crack({ verdict: 'exceeds', share: 1.2, wantedTemperature: 333.15 }));
    expect(over?.severity).toBe('warn');
    expect(over?.change).toContain('60 °C');
  });
});

describe('lines', () => {
  const line = (change: Partial<PrintMatch['line']>) => printed({ line: { ...print.line, ...change } });

  test('out of proportion to the bore', () => {
    expect(rule('line-against-bore', line({ width: 'good', height: 'good' }))).toBeNull();
    expect(rule('line-against-bore', line({ width: 'narrow', widthOverBore: 0.9 }))).toMatchObject({
      value: 0.9,
      limit: 1.05,
    });
    expect(rule('line-against-bore', line({ width: 'good', height: 'high', heightOverBore: 0.9 }))).toMatchObject({
      limit: 0.8,
    });
  });

  test('narrower than high', () => {
    const wide = (lineWidth: number) =>
      withDesign(demo, { print: { ...demo.design.print, lineWidth, layerHeight: 1e-3 } });
    expect(rule('line-wider-than-high', wide(0.99e-3))?.limit).toBe(1e-3);
    expect(rule('line-wider-than-high', wide(1e-3))).toBeNull();
  });

  test('a wall that whole passes do not fill', () => {
    const { lineWidth } = demo.design.print;
    expect(rule('passes-uneven', line({ fittedWidth: 1.14 * lineWidth }))).toBeNull();
    expect(rule('passes-uneven', line({ fittedWidth: 1.16 * lineWidth }))?.saw).toContain('passes');
    expect(rule('passes-uneven', line({ fittedWidth: 0.5 * lineWidth, passes: 1 }))?.saw).toContain('one pass');
  });

  test('unknown mechanics: nothing is said of stress', () => {
    const unknown = withDesign(printed({ crack: { ...print.crack, verdict: 'exceeds', share: 2 } }), {
      material: { ...demo.design.material, mechanical: null },
    });
    expect(rule('cooling-stress', unknown)).toBeNull();
  });
});
