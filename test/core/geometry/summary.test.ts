import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { sectionVolume, measureGeometry as summarise } from '../../../core/geometry/summary.ts';
import { designOf, flighted, plain, tip } from './designs.ts';
import { anyDesign, seed } from './generate.ts';

const measureGeometry = (design: Design) => summarise(design, buildStations(design, 12));
/** Free area of the constant square-flanked screw of the test designs, root radius `r`, m². */
const area = (r: number) => Math.PI * (49e-6 - r * r) - 0.1 * Math.PI * (6.95e-3 ** 2 - r * r);
const cylinder = (d: number, length: number) => (Math.PI / 4) * d * d * length;

describe('volumes of the screw', () => {
  it('adds root cylinder and flight sector for a constant square screw', () => {
    const { screwVolume, shankVolume, channelVolume } = measureGeometry(designOf());
    expect(screwVolume).toBeCloseTo((Math.PI * 49e-6 - area(4.5e-3)) * 84e-3, 14);
    expect(shankVolume).toBeCloseTo(cylinder(10e-3, 20e-3), 14);
    expect(channelVolume).toBeCloseTo(area(4.5e-3) * 84e-3, 14);
  });

  it('is a frustum where plain and tapered', () => {
    const { screwVolume } = measureGeometry(designOf({ sections: [plain({ rootDiameterEnd: 5e-3 })] }));
    expect(screwVolume).toBeCloseTo((Math.PI / 12) * (81e-6 + 45e-6 + 25e-6) * 10e-3, 15);
  });

  it('integrates the tapered root of a square screw in closed form', () => {
    // area = 0.9 pi r(z)² + 0.1 pi Rf², r linear
    const mean = (4.5 ** 2 + 4.5 * 5.5 + 5.5 ** 2) * (1e-6 / 3);
    const expected = (0.9 * Math.PI * mean + 0.1 * Math.PI * 6.95e-3 ** 2) * 84e-3;
    expect(sectionVolume(flighted({ rootDiameterEnd: 11e-3 }), 6.95e-3)).toBeCloseTo(expected, 15);
  });

  const tips = [
    ['flat', tip('flat'), 0, 0],
    ['60 degree cone', tip('cone', Math.PI / 3), 4.5e-3 * Math.sqrt(3), (Math.PI / 3) * 4.5e-3 ** 3 * Math.sqrt(3)],
    ['hemisphere', tip('hemisphere'), 4.5e-3, ((2 * Math.PI) / 3) * 4.5e-3 ** 3],
    ['flat with pin', tip('flat', Math.PI, 3e-3, 5e-3), 5e-3, cylinder(3e-3, 5e-3)],
    [
      'right-angled cone with pin',
      tip('cone', Math.PI / 2, 3e-3, 5e-3),
      8e-3,
      (Math.PI / 3) * (4.5 ** 2 + 4.5 * 1.5 + 1.5 ** 2) * 3e-9 + cylinder(3e-3, 5e-3),
    ],
    [
      'hemisphere with pin: a ball zone of height sqrt(R² - r²)',
      tip('hemisphere', 0, 5.4e-3, 2e-3),
      5.6e-3,
      Math.PI * (4.5 ** 2 * 3.6 - 3.6 ** 3 / 3) * 1e-9 + cylinder(5.4e-3, 2e-3),
    ],
    ['blunted right-angled cone', tip('cone', Math.PI / 2, 3e-3, 0), 3e-3, (Math.PI / 3) * 29.25 * 3e-9],
  ] as const;

  it.each(tips)('of a tip: %s', (_, shape, length, volume) => {
    const bare = measureGeometry(designOf());
    const tipped = measureGeometry(designOf({ tip: shape }));
    expect(tipped.tipEnd - tipped.sectionsLength).toBeCloseTo(length, 12);
    expect(tipped.screwVolume - bare.screwVolume).toBeCloseTo(volume, 15);
    expect(bare.tipVolume + bare.nozzleVolume - tipped.tipVolume - tipped.nozzleVolume).toBeCloseTo(volume, 15);
  });
});

describe('volumes of the melt', () => {
  const coneLength = 6.5e-3 / Math.tan(Math.PI / 6);

  it('fills the bore ahead of a flat tip and the nozzle', () => {
    const { tipVolume, nozzleVolume } = measureGeometry(designOf());
    expect(tipVolume).toBeCloseTo(cylinder(14e-3, 12e-3), 14);
    const cone = (Math.PI / 12) * (196e-6 + 14e-6 + 1e-6) * coneLength;
    expect(nozzleVolume).toBeCloseTo(cone + cylinder(1e-3, 2e-3), 14);
  });

  it('gives what of the tip stands in the nozzle to the nozzle', () => {
    const pinned = measureGeometry(designOf({ tip: tip('flat', Math.PI, 2e-3, 15e-3) }));
    const bare = measureGeometry(designOf());
    expect(bare.nozzleVolume - pinned.nozzleVolume).toBeCloseTo(cylinder(2e-3, 3e-3), 15);
    expect(pinned.tipGap).toBeCloseTo(-3e-3, 12);
  });

  it('measures the gap to the first narrowing ahead, over cylinders, to shoulders, to the orifice', () => {
    const adapter = { name: 'adapter', length: 5e-3, startDiameter: 14e-3, endDiameter: 14e-3 };
    const shoulder = { name: 'shoulder', length: 0, startDiameter: 14e-3, endDiameter: 6e-3 };
    const wide = { name: 'land', length: 3e-3, startDiameter: 6e-3, endDiameter: 6e-3 };
    const gap = (segments: Design['nozzle']['segments'], shape = tip('flat')) =>
      measureGeometry(designOf({ segments, tip: shape })).tipGap;
    expect(gap([adapter, shoulder, wide])).toBeCloseTo(17e-3, 12);
    expect(gap([adapter, wide])).toBeCloseTo(17e-3, 12);
    expect(gap([adapter])).toBeCloseTo(17e-3, 12);
    expect(gap([shoulder, wide], tip('flat', Math.PI, 3e-3, 13e-3))).toBeCloseTo(2e-3, 12);
  });
});

describe('compression', () => {
  const stepped = [flighted({ length: 42e-3 }), flighted({ length: 42e-3, rootDiameterEnd: 11e-3 })];

  it('is one for a constant screw, with a turn of area times lead', () => {
    const { compressionRatio, feedVolumePerTurn } = measureGeometry(designOf());
    expect(compressionRatio).toBe(1);
    expect(feedVolumePerTurn).toBeCloseTo(area(4.5e-3) * 14e-3, 14);
  });

  it('is the ratio of the areas for a tapered root', () => {
    expect(measureGeometry(designOf({ sections: stepped })).compressionRatio).toBeCloseTo(
      area(4.5e-3) / area(5.5e-3),
      12,
    );
  });

  it('takes the nearest flight where feed opening or end are plain', () => {
    const sections = [plain({ length: 30e-3 }), ...stepped, plain()];
    expect(measureGeometry(designOf({ sections })).compressionRatio).toBeCloseTo(area(4.5e-3) / area(5.5e-3), 12);
  });

  it('compares annuli of one bore diameter where there is no flight at all', () => {
    const { compressionRatio, feedVolumePerTurn } = measureGeometry(
      designOf({ sections: [plain({ length: 40e-3 }), plain({ rootDiameterStart: 11e-3, rootDiameterEnd: 11e-3 })] }),
    );
    expect(feedVolumePerTurn).toBeCloseTo(Math.PI * (49e-6 - 20.25e-6) * 14e-3, 14);
    expect(compressionRatio).toBeCloseTo((49 - 20.25) / (49 - 30.25), 12);
  });
});

describe('least root', () => {
  it('is found with its place, the shank included', () => {
    const necked = designOf({ sections: [flighted({ rootDiameterEnd: 7e-3 }), flighted()] });
    expect(measureGeometry(necked)).toMatchObject({ leastRootDiameter: 7e-3, leastRootAt: 84e-3 });
    const thin = measureGeometry(designOf({ shankDiameter: 6e-3 }));
    expect([thin.leastRootDiameter, thin.leastRootAt]).toEqual([6e-3, -10e-3]);
    expect(measureGeometry(designOf({ shankDiameter: 6e-3, shankLength: 0 })).leastRootDiameter).toBeCloseTo(9e-3, 14);
  });
});

describe('any makeable screw', () => {
  it('shares the bore between screw and channel', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const { channelVolume, sectionsLength } = measureGeometry(design);
        const solid = design.screw.sections.reduce((sum, section) => sum + sectionVolume(section, 6.95e-3), 0);
        expect((channelVolume + solid) / (Math.PI * 49e-6 * sectionsLength)).toBeCloseTo(1, 4);
      }),
      { seed, numRuns: 100 },
    );
  });
});
