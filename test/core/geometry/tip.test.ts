import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ScrewTip } from '../../../core/design/types.ts';
import { tipOutline, tipShape } from '../../../core/geometry/tip.ts';
import { anyDesign, pinned } from '../../helpers/arbitraries.ts';
import { loadDesign } from '../../helpers/projects.ts';

const tip = (kind: ScrewTip['kind'], angleDeg: number, pinDiameter = 0, pinLength = 0): ScrewTip => ({
  kind,
  includedAngle: (angleDeg * Math.PI) / 180,
  pinDiameter,
  pinLength,
});

describe('tipShape', () => {
  const { screw } = loadDesign('demo', 'A');
  const sections = [{ kind: 'plain', length: 30, rootDiameterStart: 10, rootDiameterEnd: 10 }] as const;

  it.each<[string, ScrewTip, number]>([
    ['flat', tip('flat', 180), 0],
    ['cone of 60 degrees', tip('cone', 60), 5 / Math.tan(Math.PI / 6)],
    ['cone of 90 degrees cut off at a pin', tip('cone', 90, 4, 1), 3],
    ['hemisphere', tip('hemisphere', 0), 5],
    ['hemisphere that a pin of 6 leaves', tip('hemisphere', 0, 6, 1), 4],
  ])('has the body length of a %s on a root of 10', (_, shape, expected) => {
    expect(tipShape({ screw: { ...screw, sections, tip: shape } }).bodyLength).toBeCloseTo(expected, 12);
  });

  it('ends its outline on the axis, never stepping back', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const line = tipOutline(tipShape(design), 24);
        line.slice(1).forEach((p, i) => {
          expect(p.z).toBeGreaterThanOrEqual((line[i]?.z ?? 0) - 1e-15);
          expect(p.r).toBeLessThanOrEqual((line[i]?.r ?? 0) + 1e-15);
        });
        expect(line[line.length - 1]?.r).toBe(0);
      }),
      pinned(60),
    );
  });
});
