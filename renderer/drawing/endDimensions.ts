/** Dimensions of the screw's two ends: tip, pin and shank. */

import { coneAngle, coneLength, fromSi, type Revision, toSi } from '../../core/index.ts';
import type { FieldSpec } from '../fields/spec.ts';
import { drawingText } from '../strings/drawing.ts';
import { shankFields, tipFields } from '../strings.ts';
import { sameAt } from './join.ts';
import { clean, type Dimension, type Magnet, type Scene } from './types.ts';

const words = drawingText;

const specOf = (key: string): FieldSpec => {
  const spec = [...tipFields, ...shankFields].find((candidate) => candidate.key === key);
  if (!spec) throw new Error(`the ends have no ${key}`);
  return spec;
};

/** Included angle of a cone between two diameters, degrees. */
export const angleDeg = (lengthMm: number, oneMm: number, otherMm: number): number =>
  fromSi(coneAngle(lengthMm, oneMm / 2, otherMm / 2), '°');
/** Its length, mm. */
export const lengthFor = (degrees: number, oneMm: number, otherMm: number): number =>
  coneLength(toSi(degrees, '°'), oneMm / 2, otherMm / 2);

/** Places of the tip, mm. */
interface TipPlaces {
  readonly start: number;
  readonly joint: number;
  readonly end: number;
  readonly rootMm: number;
}

/** Where the tip's body begins and ends, and its foremost point, as drawn. */
function placesOf({ screw }: Revision, endMm: number): TipPlaces {
  const start = screw.sections.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const pin = screw.tip.pinDiameterMm > 0 ? screw.tip.pinLengthMm : 0;
  return { start, joint: endMm - pin, end: endMm, rootMm: screw.sections.at(-1)?.rootDiameterEndMm ?? 0 };
}

const shared = (scene: Scene, key: string, owner: string) => ({
  id: key,
  group: 'outlet' as const,
  entry: null,
  owner,
  path: [...scene.root, ...key.split('.')],
  spec: specOf(key),
  sign: '',
  magnets: [] as readonly Magnet[],
  range: null,
});

const angleKey = 'screw.tip.includedAngleDeg';

/** The cone's angle and its length, which are two ways to say the same. */
function coneOf(scene: Scene, { start, joint, rootMm }: TipPlaces): readonly Dimension[] {
  const { tip } = scene.revision.screw;
  if (tip.kind !== 'cone' || rootMm <= tip.pinDiameterMm) return [];
  const base = shared(scene, angleKey, words.tip);
  const middle = (start + joint) / 2;
  const half = (at: number) => start + 2 * (at - start);
  const [entry] = scene.revision.nozzle.segments;
  const entryAngle = entry ? angleDeg(entry.lengthMm, entry.startDiameterMm, entry.endDiameterMm) : 0;
  const magnets =
    entryAngle >= 10 && entryAngle <= 170
      ? [{ value: clean(Number(entryAngle.toFixed(1))), name: words.magnets.entryAngle }]
      : [];
  const angle: Dimension = {
    ...base,
    value: tip.includedAngleDeg,
    mark: { kind: 'note', z: middle, r: (rootMm + tip.pinDiameterMm) / 4, above: true },
    grip: { z: middle, r: (rootMm + tip.pinDiameterMm) / 4, axis: 'z', aside: 0 },
    valueAt: (at) => angleDeg(Math.max(0.001, half(at) - start), rootMm, tip.pinDiameterMm),
    changes: (value) => sameAt([base.path], value),
    magnets,
    rank: 1,
  };
  const length: Dimension = {
    ...base,
    id: `${angleKey}/length`,
    spec: { key: angleKey, label: words.tipLength, unit: 'mm', help: words.tipLengthHelp },
    value: Number((joint - start).toFixed(2)),
    mark: { kind: 'along', from: start, to: joint, r: rootMm / 2, above: false },
    grip: { z: joint, r: 0, axis: 'z', aside: 0 },
    valueAt: (at) => at - start,
    changes: (value) => sameAt([base.path], angleDeg(value, rootMm, tip.pinDiameterMm)),
    range: { min: lengthFor(170, rootMm, tip.pinDiameterMm), max: lengthFor(10, rootMm, tip.pinDiameterMm) },
    rank: 4,
  };
  return [angle, length];
}

function pinOf(scene: Scene, { joint, end, rootMm }: TipPlaces): readonly Dimension[] {
  const { tip } = scene.revision.screw;
  if (tip.pinDiameterMm <= 0) return [];
  const [diameter, length] = ['screw.tip.pinDiameterMm', 'screw.tip.pinLengthMm'].map((key) =>
    shared(scene, key, words.tip),
  );
  const middle = (joint + end) / 2;
  return [
    {
      ...diameter,
      value: tip.pinDiameterMm,
      sign: 'Ø ',
      mark: { kind: 'across', z: middle, r: tip.pinDiameterMm / 2, above: true },
      grip: { z: middle, r: tip.pinDiameterMm / 2, axis: 'r', aside: 0 },
      valueAt: (at) => 2 * Math.abs(at),
      changes: (value) => sameAt([diameter.path], value),
      magnets: [{ value: rootMm, name: words.magnets.root }],
      rank: 2,
    },
    {
      ...length,
      value: tip.pinLengthMm,
      mark: { kind: 'along', from: joint, to: end, r: tip.pinDiameterMm / 2, above: false },
      grip: { z: end, r: 0, axis: 'z', aside: 1 },
      valueAt: (at) => at - joint,
      changes: (value) => sameAt([length.path], value),
      rank: 2,
    },
  ];
}

function shankOf(scene: Scene): readonly Dimension[] {
  const { shank } = scene.revision.screw;
  const [diameter, length] = ['screw.shank.diameterMm', 'screw.shank.lengthMm'].map((key) => ({
    ...shared(scene, key, words.shank),
    group: 'screw' as const,
  }));
  const middle = -shank.lengthMm * 0.6;
  return [
    {
      ...diameter,
      value: shank.diameterMm,
      sign: 'Ø ',
      mark: { kind: 'across', z: middle, r: shank.diameterMm / 2, above: true },
      grip: { z: middle, r: shank.diameterMm / 2, axis: 'r', aside: 0 },
      valueAt: (at) => 2 * Math.abs(at),
      changes: (value) => sameAt([diameter.path], value),
      rank: 5,
    },
    {
      ...length,
      value: shank.lengthMm,
      mark: { kind: 'along', from: -shank.lengthMm, to: 0, r: shank.diameterMm / 2, above: false },
      grip: { z: -shank.lengthMm, r: 0, axis: 'z', aside: 0 },
      valueAt: (at) => -at,
      changes: (value) => sameAt([length.path], value),
      rank: 5,
    },
  ];
}

/** All dimensions of the ends; `endMm` is the tip's foremost point as drawn. */
export function endDimensions(scene: Scene, endMm: number): readonly Dimension[] {
  const places = placesOf(scene.revision, endMm);
  return [...coneOf(scene, places), ...pinOf(scene, places), ...shankOf(scene)];
}
