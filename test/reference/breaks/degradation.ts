/** Breaks that the checks of the degradation must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const degradationBreaks: readonly Break[] = [
  {
    check: 'degradation.activationFromTwoRates',
    file: 'core/age/arrhenius.ts',
    from: 'gasConstant * Math.log(second.rate / first.rate)',
    to: 'gasConstant * Math.log10(second.rate / first.rate)',
  },
  { check: 'degradation.rateAt600C', file: 'core/age/arrhenius.ts', from: '8.314462618', to: '8.134462618' },
  {
    check: 'degradation.polylactideAt240C',
    file: 'core/age/extentForms.ts',
    from: '1 / (1 / initial + extent / repeatUnitMass)',
    to: '1 / (1 / initial + extent * repeatUnitMass)',
  },
  {
    check: 'degradation.twoSteps',
    file: 'core/age/twoStep.ts',
    from: 'rates.firstYield * rates.first * state.a',
    to: 'rates.first * state.a',
  },
  {
    check: 'degradation.secondOrderRamp',
    file: 'core/age/extentForms.ts',
    from: 'Math.log1p(base) / (1 - order)',
    to: 'Math.log1p(base) / -order',
  },
  {
    check: 'degradation.worstOf34Pairs',
    file: 'core/age/deltaE2000.ts',
    from: '0.32 * cosine(3, 6)',
    to: '0.32 * cosine(3, -6)',
  },
  { check: 'degradation.bluePair', file: 'core/age/deltaE2000.ts', from: '(hue - 275) / 25', to: '(hue - 275) / 24' },
  {
    check: 'degradation.oppositePair',
    file: 'core/age/deltaE2000.ts',
    from: '(sum + 360) / 2 : (sum - 360) / 2',
    to: 'sum / 2 : sum / 2',
  },
  {
    check: 'degradation.farPair',
    file: 'core/age/deltaE2000.ts',
    from: '1 + 0.045 * chroma',
    to: '1 + 0.054 * chroma',
  },
  { check: 'degradation.redLightness', file: 'core/age/cielab.ts', from: '116 * fy - 16', to: '116 * fy - 15' },
  { check: 'degradation.greenA', file: 'core/age/cielab.ts', from: '500 * (fx - fy)', to: '200 * (fx - fy)' },
  { check: 'degradation.blueB', file: 'core/age/cielab.ts', from: '200 * (fy - fz)', to: '500 * (fy - fz)' },
  {
    check: 'degradation.middleGrey',
    file: 'core/age/cielab.ts',
    from: '((v + 0.055) / 1.055) ** 2.4',
    to: '((v + 0.055) / 1.055) ** 2.2',
  },
  { check: 'degradation.tanX', file: 'core/age/cielab.ts', from: 'fy + lab[1] / 500', to: 'fy - lab[1] / 500' },
  {
    check: 'degradation.darkLightness',
    file: 'core/age/cielab.ts',
    from: 't / (3 * delta * delta) + 4 / 29',
    to: 't / (3 * delta) + 4 / 29',
  },
  { check: 'degradation.yellownessE313', file: 'core/age/e313Coefficients.ts', from: '1.1335', to: '1.1353' },
  {
    check: 'degradation.yellownessUnderC',
    file: 'core/age/e313Coefficients.ts',
    from: "'C/2': [1.2769",
    to: "'C/2': [1.2871",
  },
  { check: 'degradation.browning', file: 'core/age/indices.ts', from: 'a - 3.012 * b', to: 'a - 3.12 * b' },
];
