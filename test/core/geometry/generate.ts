/** Random but makeable screws for property tests. */

import fc from 'fast-check';
import type { Design, ScrewSection } from '../../../core/design/types.ts';
import { designOf, tip } from './designs.ts';

/** Seed of all property tests here: fixed, so that a failure comes back. */
export const seed = 20_140_601;

const length = (min: number, max: number) => fc.integer({ min: min * 1e3, max: max * 1e3 }).map((um) => um * 1e-6);
const root = length(5, 12.5);
/** Zero about as often as anything else, so that square flanks and sharp roots stay common. */
const orZero = (some: fc.Arbitrary<number>) => fc.oneof(fc.constant(0), some);

const flightedSection = fc.record({
  kind: fc.constant('flighted' as const),
  length: length(4, 50),
  leadStart: length(7, 28),
  leadEnd: length(7, 28),
  rootDiameterStart: root,
  rootDiameterEnd: root,
  starts: fc.integer({ min: 1, max: 3 }),
  flightWidth: length(0.2, 1.8),
  flankAngle: orZero(fc.double({ min: 0.01, max: 0.7, noNaN: true })),
  rootFillet: orZero(length(0.05, 1.5)),
});

const plainSection = fc.record({
  kind: fc.constant('plain' as const),
  length: length(1, 20),
  rootDiameterStart: root,
  rootDiameterEnd: root,
});

/** Makes some neighbours continue each other's root and lead, as real screws do. */
function continued(sections: ScrewSection[]): ScrewSection[] {
  const out: ScrewSection[] = [];
  sections.forEach((section, i) => {
    const before = out[i - 1];
    if (!before || i % 2 === 0) out.push(section);
    else if (before.kind === 'plain' || section.kind === 'plain') {
      out.push({ ...section, rootDiameterStart: before.rootDiameterEnd });
    } else out.push({ ...before, ...{ rootDiameterStart: before.rootDiameterEnd, leadStart: before.leadEnd } });
  });
  return out;
}

const anyTip = fc
  .record({
    kind: fc.constantFrom('flat' as const, 'cone' as const, 'hemisphere' as const),
    angle: fc.double({ min: 0.3, max: 2.9, noNaN: true }),
    pinDiameter: orZero(length(1, 4.9)),
    pinLength: orZero(length(0.5, 10)),
  })
  .map(({ kind, angle, pinDiameter, pinLength }) => {
    const included = kind === 'flat' ? Math.PI : kind === 'cone' ? angle : 0;
    return tip(kind, included, pinDiameter, pinDiameter > 0 ? pinLength : 0);
  });

/** Designs with one to four sections, any tip, either hand, with or without a shank. */
export const anyDesign: fc.Arbitrary<Design> = fc
  .record({
    sections: fc.array(fc.oneof({ weight: 4, arbitrary: flightedSection }, plainSection), {
      minLength: 1,
      maxLength: 4,
    }),
    hand: fc.constantFrom('right' as const, 'left' as const),
    tip: anyTip,
    shankDiameter: length(5, 13),
    shankLength: orZero(length(5, 40)),
    width: length(2, 16),
    openingLength: length(2, 30),
  })
  .map(({ sections, width, openingLength, ...rest }) =>
    designOf({ ...rest, sections: continued(sections), feedOpening: { start: 2e-3, length: openingLength, width } }),
  );

/** Mesh settings from the coarsest allowed up. */
export const anyOptions = fc.record({
  aroundCount: fc.integer({ min: 24, max: 80 }),
  ringsPerTurn: fc.integer({ min: 12, max: 60 }),
});
