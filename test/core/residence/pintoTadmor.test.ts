import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  dwellOfHeight,
  pairedHeight,
  pintoTadmorOlder,
  pintoTadmorTime,
  shareOfHeight,
} from '../../../core/residence/pintoTadmor.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../reference/flow/caseB_thin_channel_limit.json', import.meta.url), 'utf8'),
);

/** F at a dwell: the share whose time it is. */
function shareBy(dwell: number): number {
  let [low, high] = [0, 1];
  for (let pass = 0; pass < 50; pass++) {
    const middle = (low + high) / 2;
    if (pintoTadmorTime(middle) < dwell) low = middle;
    else high = middle;
  }
  return low;
}

test('the shortest dwell is 3/4 of the mean (Pinto & Tadmor 1970)', () => {
  expect(dwellOfHeight(2 / 3)).toBeCloseTo(0.75, 12);
  expect(shareOfHeight(2 / 3)).toBeCloseTo(0, 12);
  expect(shareOfHeight(1)).toBeCloseTo(1, 12);
});

test('paired heights carry equal stream function: y^2 - y^3', () => {
  for (const xi of [0.7, 0.8, 0.9, 0.99]) {
    const paired = pairedHeight(xi);
    expect(paired * paired * (1 - paired)).toBeCloseTo(xi * xi * (1 - xi), 12);
  }
});

test('the mean of the dwell over the flow is 1', () => {
  let sum = 0;
  const parts = 200_000;
  for (let k = 0; k < parts; k++) sum += pintoTadmorTime((k + 0.5) / parts) / parts;
  expect(sum).toBeCloseTo(1, 3);
});

test.each(Object.entries(stored.F as Record<string, number>))(
  'F(%s) agrees with the semi-analytic limit',
  (dwell, share) => {
    expect(shareBy(Number(dwell))).toBeCloseTo(share, 3);
  },
);

test.each(Object.entries(stored.t_at_F as Record<string, number>))('time at F = %s agrees', (share, time) => {
  expect(pintoTadmorTime(Number(share)) / time).toBeCloseTo(1, 2);
});

test.each(Object.entries(stored.area_frac_dwell_gt as Record<string, number>))(
  'area older than %s agrees',
  (dwell, area) => {
    expect(pintoTadmorOlder(Number(dwell))).toBeCloseTo(area, 3);
  },
);
