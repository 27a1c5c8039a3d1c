/** Dimensions of the barrel: bore, outside, length, feed opening, heat break and the borders of zones. */

import type { Change } from '../fields/check.ts';
import type { FieldSpec } from '../fields/spec.ts';
import type { Path } from '../store/path.ts';
import { drawingText } from '../strings/drawing.ts';
import { barrelFields, feedOpeningFields, heatBreakFields, zoneFields } from '../strings.ts';
import { agree, sameAt } from './join.ts';
import { boreRun } from './nozzleDimensions.ts';
import { clean, type Dimension, type Magnet, type Scene } from './types.ts';

const words = drawingText;

const specOf = (key: string): FieldSpec => {
  const spec = [...barrelFields, ...feedOpeningFields, ...heatBreakFields].find((candidate) => candidate.key === key);
  if (!spec) throw new Error(`the barrel has no ${key}`);
  return spec;
};

const shared = (scene: Scene, key: string, owner: string) => ({
  id: key,
  group: 'barrel' as const,
  entry: null,
  owner,
  path: [...scene.root, ...key.split('.')] as Path,
  spec: specOf(key),
  sign: '',
  magnets: [] as readonly Magnet[],
  range: null,
});

/** Ends of zones at the barrel's end go with it. */
function zoneEndsAt(scene: Scene, atMm: number): readonly Path[] {
  return scene.revision.barrel.zones.flatMap((zone, index) =>
    agree(zone.endMm, atMm) ? [[...scene.root, 'barrel', 'zones', index, 'endMm']] : [],
  );
}

function sizes(scene: Scene): readonly Dimension[] {
  const { boreDiameterMm, outerDiameterMm, lengthMm } = scene.revision.barrel;
  const [bore, outer, length] = ['boreDiameterMm', 'outerDiameterMm', 'lengthMm'].map((key) =>
    shared(scene, `barrel.${key}`, words.barrel),
  );
  const across = (z: number, r: number) => ({
    sign: 'Ø ',
    mark: { kind: 'across' as const, z, r, above: true },
    grip: { z, r, axis: 'r' as const, aside: 0 as const },
    valueAt: (at: number) => 2 * Math.abs(at),
  });
  return [
    {
      ...bore,
      ...across(lengthMm * 0.6, boreDiameterMm / 2),
      value: boreDiameterMm,
      changes: (value, { joined }) => sameAt([bore.path, ...(joined ? boreRun(scene) : [])], value),
      rank: 1,
    },
    {
      ...outer,
      ...across(lengthMm * 0.72, outerDiameterMm / 2),
      value: outerDiameterMm,
      changes: (value) => sameAt([outer.path], value),
      rank: 5,
    },
    {
      ...length,
      value: lengthMm,
      mark: { kind: 'along', from: 0, to: lengthMm, r: outerDiameterMm / 2, above: false },
      grip: { z: lengthMm, r: outerDiameterMm * 0.36 + boreDiameterMm * 0.14, axis: 'z', aside: 0 },
      valueAt: (at) => at,
      changes: (value, { joined }) => sameAt([length.path, ...(joined ? zoneEndsAt(scene, lengthMm) : [])], value),
      rank: 2,
    },
  ];
}

/** A stretch that is stored as start and length: both ends can be pulled. */
interface Stretch {
  readonly key: 'barrel.feedOpening' | 'barrel.heatBreak';
  readonly owner: string;
  readonly startMm: number;
  readonly lengthMm: number;
  readonly r: number;
  readonly above: boolean;
  readonly rank: number;
}

function stretchDimensions(scene: Scene, stretch: Stretch): readonly Dimension[] {
  const { key, owner, startMm, lengthMm, r, above, rank } = stretch;
  const [start, length] = ['startMm', 'lengthMm'].map((name) => shared(scene, `${key}.${name}`, owner));
  const side = above ? 1 : -1;
  return [
    {
      ...start,
      sign: words.at,
      value: startMm,
      mark: { kind: 'note', z: startMm, r: side * r, above },
      grip: { z: startMm, r: side * r, axis: 'z', aside: 0 },
      valueAt: (at) => at,
      changes: (value, { joined }): readonly Change[] => {
        const own = sameAt([start.path], value);
        // joined: the far end stays where it is
        return joined ? [...own, { path: length.path, value: clean(lengthMm + startMm - value) }] : own;
      },
      rank: rank + 1,
    },
    {
      ...length,
      value: lengthMm,
      mark: { kind: 'along', from: startMm, to: startMm + lengthMm, r, above },
      grip: { z: startMm + lengthMm, r: side * r, axis: 'z', aside: 0 },
      valueAt: (at) => at - startMm,
      changes: (value) => sameAt([length.path], value),
      rank,
    },
  ];
}

/** Where the screw's sections end, mm, for zones to stick to. */
function sectionBorders(scene: Scene): readonly Magnet[] {
  let z = 0;
  return scene.revision.screw.sections.map(({ lengthMm }) => {
    z += lengthMm;
    return { value: clean(z), name: words.magnets.sectionBorder };
  });
}

/** One end of a zone; its start is left out where the zone before ends there and both move together. */
function zoneEnd(scene: Scene, index: number, key: 'startMm' | 'endMm'): readonly Dimension[] {
  const { zones, outerDiameterMm, lengthMm } = scene.revision.barrel;
  const zone = zones[index];
  const list: Path = [...scene.root, 'barrel', 'zones'];
  const other = key === 'startMm' ? 'endMm' : 'startMm';
  const value = zone[key];
  const partners = zones.flatMap((one, i): Path[] =>
    i !== index && agree(one[other], value) ? [[...list, i, other]] : [],
  );
  if (key === 'startMm' && ((partners.length > 0 && scene.manners.joined) || value === 0)) return [];
  const path: Path = [...list, index, key];
  const r = -outerDiameterMm / 2;
  return [
    {
      id: `zone/${index}/${key}`,
      group: 'barrel',
      entry: { list: 'zones', index },
      owner: words.zone(zone.name),
      path,
      spec: zoneFields[key],
      sign: words.at,
      value,
      mark: { kind: 'note', z: value, r, above: false },
      grip: { z: value, r, axis: 'z', aside: scene.manners.joined ? 0 : key === 'startMm' ? 1 : -1 },
      valueAt: (at) => at,
      changes: (wanted, { joined }) => sameAt([path, ...(joined ? partners : [])], wanted),
      magnets: [{ value: lengthMm, name: words.magnets.barrelEnd }, ...sectionBorders(scene)],
      range: null,
      rank: 2,
    },
  ];
}

/** All dimensions of the barrel. */
export function barrelDimensions(scene: Scene): readonly Dimension[] {
  const { feedOpening, heatBreak, zones, outerDiameterMm, boreDiameterMm } = scene.revision.barrel;
  const opening = stretchDimensions(scene, {
    key: 'barrel.feedOpening',
    owner: words.feedOpening,
    startMm: feedOpening.startMm,
    lengthMm: feedOpening.lengthMm,
    r: outerDiameterMm / 2,
    above: true,
    rank: 2,
  });
  const broken = heatBreak
    ? stretchDimensions(scene, {
        key: 'barrel.heatBreak',
        owner: words.heatBreak,
        startMm: heatBreak.startMm,
        lengthMm: heatBreak.lengthMm,
        r: boreDiameterMm / 2 + heatBreak.wallMm,
        above: true,
        rank: 5,
      })
    : [];
  const borders = zones.flatMap((_, index) => [...zoneEnd(scene, index, 'startMm'), ...zoneEnd(scene, index, 'endMm')]);
  return [...sizes(scene), ...opening, ...broken, ...borders];
}
