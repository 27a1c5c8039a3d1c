/** Common sense of solved fields: dead melt shrinks where corners are rounded, the tip is pointed, the shoulder leans. */

import { expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { defaultOptions, predict } from '../../../core/prediction/predict.ts';
import type { DeadSpot } from '../../../core/prediction/types.ts';
import type { Revision } from '../../../core/project/schema.ts';
import { changedDemo, expectOk, revisionAt } from '../../helpers/projects.ts';

/** Where dead spots are looked for: in the channel, anywhere ahead of it, or in the corners ahead of it. */
type Where = 'channel' | 'head' | 'corners of the head';

const lies = ({ part, cause }: DeadSpot, where: Where): boolean =>
  where === 'channel' ? part === 'channel' : part !== 'channel' && (where === 'head' || cause === 'corner');

/** Volume of the solved dead spots, m³, of the demo's last revision with a change made to it. */
function deadVolume(where: Where, change: (revision: Revision) => void): number {
  const project = changedDemo((demo) => change(revisionAt(demo, 2)));
  const design = expectOk(validateDesign(project, revisionAt(project, 2).id));
  const { dead } = predict(design, { ...defaultOptions, curvePoints: 0, fields: 'solved' });
  return dead.spots.filter((spot) => lies(spot, where)).reduce((sum, { volume }) => sum + volume, 0);
}

/** Root fillets of all flights, mm. */
const fillets = (mm: number) => (revision: Revision) => {
  for (const section of revision.screw.sections) if (section.kind === 'flighted') section.rootFilletMm = mm;
};

/** The cone between barrel and nozzle, mm long. */
const entry = (mm: number) => (revision: Revision) => {
  const [first] = revision.nozzle.segments;
  if (!first) throw new Error('the nozzle has an entry');
  first.lengthMm = mm;
};

test('a fillet at the root leaves less dead melt in the corners of the channel', () =>
  expect(deadVolume('channel', fillets(1.2))).toBeLessThan(0.9 * deadVolume('channel', fillets(0.1))));

/** A screw that ends flat. */
const flat = ({ screw }: Revision): void => {
  screw.tip = { kind: 'flat', pinDiameterMm: 0, pinLengthMm: 0 };
};

test('a cone on the screw leaves less dead melt before it than a flat end', () =>
  expect(deadVolume('head', () => {})).toBeLessThan(0.9 * deadVolume('head', flat)));

test('a shoulder that leans leaves less dead melt in the corner before it than a steep one', () => {
  const ahead = (mm: number) => (revision: Revision) => {
    flat(revision);
    entry(mm)(revision);
  };
  expect(deadVolume('corners of the head', ahead(7.794))).toBeLessThan(
    0.9 * deadVolume('corners of the head', ahead(1)),
  );
});
