/** Projects at the edge of what is allowed, and just past it. */

import type { Project, Revision, SectionInput } from '../../core/project/schema.ts';
import { changedDemo, revisionAt } from './projects.ts';

type Flighted = Extract<SectionInput, { kind: 'flighted' }>;

/** Every `…Mm` number under a value times a factor; a new value, the old one is left. */
export function scaled<T>(value: T, factor: number): T {
  const walk = (node: unknown, key: string): unknown => {
    if (Array.isArray(node)) return node.map((item) => walk(item, key));
    if (typeof node === 'number') return key.endsWith('Mm') ? node * factor : node;
    if (node === null || typeof node !== 'object') return node;
    return Object.fromEntries(Object.entries(node).map(([k, item]) => [k, walk(item, k)]));
  };
  return walk(value, '') as T;
}

/** The demo with its revision C changed and active. */
export const demoC = (change: (revision: Revision, project: Project) => void): Project =>
  changedDemo((project) => {
    project.activeRevision = 'C';
    change(revisionAt(project, 2), project);
  });

/** The demo with revision C built `factor` times as large. */
export const scaledDemo = (factor: number): Project =>
  demoC((revision, project) => {
    project.revisions[2] = {
      ...revision,
      ...scaled({ screw: revision.screw, barrel: revision.barrel, nozzle: revision.nozzle }, factor),
    };
  });

/** A flighted section of a revision; fails the test where it is plain. */
export function flightedAt(revision: Revision, index: number): Flighted {
  const section = revision.screw.sections[index];
  if (section?.kind !== 'flighted') throw new Error(`section ${index} has no flight`);
  return section;
}

/** Sections of equal length, each with a step to the next. */
const manySteps = (revision: Revision, count: number): void => {
  const model = flightedAt(revision, 0);
  revision.screw.sections = Array.from({ length: count }, (_, i) => ({
    ...model,
    lengthMm: 160 / count,
    rootDiameterStartMm: 8 + (i % 3),
    rootDiameterEndMm: 8 + (i % 3),
  }));
};

/** Valid, but only just: each by its name, revision C active. */
export const edgeProjects: readonly (readonly [name: string, project: Project])[] = [
  ['a bore of 3 mm', scaledDemo(3 / 14)],
  ['a bore of 60 mm', scaledDemo(60 / 14)],
  ['no clearance at all', demoC((r) => (r.screw.radialClearanceMm = 0))],
  ['forty sections with steps', demoC((r) => manySteps(r, 40))],
  [
    'six thin flights',
    demoC((r) => {
      for (const section of r.screw.sections)
        Object.assign(section, { starts: 6, flightWidthMm: 0.8, rootFilletMm: 0 });
    }),
  ],
  ['a fillet that fills the flight', demoC((r) => (flightedAt(r, 2).rootFilletMm = 1.6))],
  [
    'flights sharp at the tip with flanks of 60 degrees',
    demoC((r) => Object.assign(flightedAt(r, 2), { flightWidthMm: 0, flankAngleDeg: 60, rootFilletMm: 0.5 })),
  ],
  ['a lead that doubles', demoC((r) => (flightedAt(r, 1).leadEndMm = 28))],
  [
    'a root that shrinks with the flow',
    demoC((r) => Object.assign(flightedAt(r, 0), { rootDiameterStartMm: 12, rootDiameterEndMm: 4, rootFilletMm: 0.8 })),
  ],
  [
    'a channel of 0.3 mm',
    demoC((r) =>
      Object.assign(flightedAt(r, 2), { rootDiameterStartMm: 13.4, rootDiameterEndMm: 13.4, rootFilletMm: 0 }),
    ),
  ],
  [
    'a plain last section',
    demoC(
      (r) => (r.screw.sections[2] = { kind: 'plain', lengthMm: 50, rootDiameterStartMm: 10.4, rootDiameterEndMm: 13 }),
    ),
  ],
  [
    'a pin into the bore of the nozzle',
    demoC((r) => (r.screw.tip = { kind: 'flat', pinDiameterMm: 3, pinLengthMm: 14 })),
  ],
  [
    'an orifice as wide as the bore',
    demoC(
      (r) =>
        (r.nozzle = {
          ...r.nozzle,
          segments: [{ name: 'open', lengthMm: 12, startDiameterMm: 14, endDiameterMm: 14 }],
        }),
    ),
  ],
  [
    'a nozzle of one sharp plate',
    demoC((r) => {
      r.screw.tip = { kind: 'flat', pinDiameterMm: 0, pinLengthMm: 0 };
      r.nozzle.segments = [
        { name: 'shoulder', lengthMm: 0, startDiameterMm: 14, endDiameterMm: 1 },
        { name: 'plate', lengthMm: 0.1, startDiameterMm: 1, endDiameterMm: 1 },
      ];
    }),
  ],
  ['a screw that turns the other way', demoC((r) => (r.screw.hand = 'left'))],
  [
    'no heat break and one zone',
    demoC((r) => {
      r.barrel.heatBreak = null;
      r.barrel.zones = [{ kind: 'insulated', name: 'all', startMm: 0, endMm: 162 }];
    }),
  ],
];

/** Each of these is refused with its code. */
export const brokenProjects: readonly (readonly [code: string, project: Project])[] = [
  ['root-too-thick', demoC((r) => (flightedAt(r, 2).rootDiameterEndMm = 14))],
  ['clearance-too-wide', demoC((r) => (r.screw.radialClearanceMm = 1))],
  ['flights-meet', demoC((r) => Object.assign(flightedAt(r, 0), { starts: 6, flightWidthMm: 2.5 }))],
  ['fillet-too-large', demoC((r) => (flightedAt(r, 1).rootFilletMm = 2.5))],
  ['tip-touches', demoC((r) => (r.screw.tip = { kind: 'hemisphere', pinDiameterMm: 4, pinLengthMm: 20 }))],
  ['screw-too-long', demoC((r) => (r.barrel.lengthMm = 159))],
  ['feed-outside', demoC((r) => (r.barrel.feedOpening.startMm = 150))],
  ['zones-overlap', demoC((r) => Object.assign(r.barrel.zones[1] as object, { endMm: 60 }))],
  ['motor-curve-order', demoC((r) => r.drive.motorCurve.reverse())],
  [
    'values-out-of-order',
    demoC((_, p) => Object.assign(p.materials[0]?.softeningC as object, { value: 170, low: 170, high: 170 })),
  ],
  ['unknown-id', demoC((r) => (r.materialId = 'gone'))],
];
