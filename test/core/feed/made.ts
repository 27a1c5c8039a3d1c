/** The demo's revision C with parts of it changed after validation, for tests of formulas. */

import type { Design, DesignMaterial } from '../../../core/design/types.ts';
import { loadDesign } from '../../helpers/projects.ts';

/** The demo as it is. */
export const demo: Design = loadDesign('demo', 'C');

/** With a material changed. */
export const changedMaterial = (parts: Partial<DesignMaterial>, design: Design = demo): Design => ({
  ...design,
  material: { ...design.material, ...parts },
});

/** With grains changed. */
export const changedGrain = (parts: Partial<DesignMaterial['grain']>, design: Design = demo): Design =>
  changedMaterial({ grain: { ...design.material.grain, ...parts } }, design);

/** With a hopper changed. */
export const changedHopper = (parts: Partial<Design['hopper']>, design: Design = demo): Design => ({
  ...design,
  hopper: { ...design.hopper, ...parts },
});

/** With the feed opening changed. */
export const changedOpening = (parts: Partial<Design['barrel']['feedOpening']>, design: Design = demo): Design => ({
  ...design,
  barrel: { ...design.barrel, feedOpening: { ...design.barrel.feedOpening, ...parts } },
});

/** With friction coefficients without a range. */
export const changedFriction = (onBarrel: number, onScrew: number, design: Design = demo): Design => {
  const exactly = (value: number) => ({ value, low: value, high: value });
  return changedMaterial({ frictionOnBarrel: exactly(onBarrel), frictionOnScrew: exactly(onScrew) }, design);
};

/** With a flighted screw of one depth, m, along the length of the demo's. */
export function evenScrew(depth: number, design: Design = demo): Design {
  const first = design.screw.sections.find((section) => section.kind === 'flighted');
  if (first?.kind !== 'flighted') throw new Error('no flight');
  const length = design.screw.sections.reduce((sum, section) => sum + section.length, 0);
  const rootDiameter = design.barrel.boreDiameter - 2 * depth;
  const even = { ...first, length, rootDiameterStart: rootDiameter, rootDiameterEnd: rootDiameter, rootFillet: 0 };
  return { ...design, screw: { ...design.screw, sections: [even] } };
}
