/** Dimensions of the screw's sections: lengths, root diameters, leads, flight lands. */

import type { SectionInput, SideShape } from '../../core/index.ts';
import type { FieldSpec } from '../fields/spec.ts';
import type { Path } from '../store/path.ts';
import { drawingText } from '../strings/drawing.ts';
import { sectionFields } from '../strings.ts';
import { agree, sameAt } from './join.ts';
import { clean, type Dimension, type Magnet, type Scene } from './types.ts';

const words = drawingText;

const specOf = (key: string): FieldSpec => {
  const spec = sectionFields.find((candidate) => candidate.key === key);
  if (!spec) throw new Error(`sections have no ${key}`);
  return spec;
};

/** A section where it stands, mm. */
interface Stood {
  readonly scene: Scene;
  readonly section: SectionInput;
  readonly index: number;
  readonly start: number;
  readonly end: number;
  readonly path: Path;
}

const neighbour = ({ scene, index }: Stood, by: -1 | 1): SectionInput | undefined =>
  scene.revision.screw.sections[index + by];

const shared = ({ section, index, path }: Stood, key: string) => ({
  id: `section/${index}/${key}`,
  group: 'screw' as const,
  entry: { list: 'sections' as const, index },
  owner: words.section(index + 1, section.name ?? ''),
  path: [...path, key],
  spec: specOf(key),
  sign: '',
  magnets: [] as readonly Magnet[],
  range: null,
});

/** The section's length, pulled at its far border. */
function lengthOf(stood: Stood): Dimension {
  const { section, scene, start, end, path, index } = stood;
  const next = neighbour(stood, 1);
  const nextLength: Path = [...path.slice(0, -1), index + 1, 'lengthMm'];
  return {
    ...shared(stood, 'lengthMm'),
    value: section.lengthMm,
    mark: { kind: 'along', from: start, to: end, r: scene.revision.barrel.outerDiameterMm / 2, above: false },
    grip: { z: end, r: 0, axis: 'z', aside: 0 },
    valueAt: (at) => at - start,
    changes: (value, { keepLength }) => {
      const own = { path: [...path, 'lengthMm'], value: clean(value) };
      if (!next || !keepLength) return [own];
      return [own, { path: nextLength, value: clean(next.lengthMm + section.lengthMm - value) }];
    },
    rank: 0,
  };
}

type End = 'Start' | 'End';

/** The touching end of the neighbour, if there is one. */
function touching(stood: Stood, end: End): { readonly path: Path; readonly value: number } | null {
  const by = end === 'Start' ? -1 : 1;
  const other = neighbour(stood, by);
  const key = end === 'Start' ? 'rootDiameterEndMm' : 'rootDiameterStartMm';
  return other ? { path: [...stood.path.slice(0, -1), stood.index + by, key], value: other[key] } : null;
}

function rootMagnets(stood: Stood, end: End): readonly Magnet[] {
  const { section } = stood;
  const other = end === 'Start' ? section.rootDiameterEndMm : section.rootDiameterStartMm;
  const next = touching(stood, end);
  const name = end === 'Start' ? words.magnets.before : words.magnets.after;
  return [{ value: other, name: words.magnets.otherEnd }, ...(next ? [{ value: next.value, name }] : [])];
}

/** Root diameter at one end; left out at the start where it is joined to the section before, whose end shows it. */
function rootOf(stood: Stood, end: End): readonly Dimension[] {
  const key = `rootDiameter${end}Mm` as const;
  const { section, scene, start, path } = stood;
  const value = section[key];
  const next = touching(stood, end);
  const joinable = next !== null && agree(next.value, value);
  if (joinable && end === 'Start' && scene.manners.joined) return [];
  const z = end === 'Start' ? start : stood.end;
  return [
    {
      ...shared(stood, key),
      value,
      sign: 'Ø ',
      mark: { kind: 'across', z, r: value / 2, above: true },
      grip: { z, r: value / 2, axis: 'r', aside: end === 'Start' ? 1 : -1 },
      valueAt: (at) => 2 * Math.abs(at),
      changes: (wanted, { joined }) => sameAt([[...path, key], ...(joinable && joined ? [next.path] : [])], wanted),
      magnets: rootMagnets(stood, end),
      rank: 1,
    },
  ];
}

/** A flight cut above the axis: its middle and where it stands, mm. */
interface Tooth {
  readonly z: number;
  readonly r: number;
}

/** Flights cut above the axis, in order along it. */
export function teethOf({ cuts }: SideShape): readonly Tooth[] {
  const found = cuts.flatMap(({ x, y }) => {
    const top = Math.floor(x.length / 2);
    return y[top] > 0 ? [{ z: 500 * (x[top - 1] + x[top]), r: 1000 * y[top] }] : [];
  });
  return found.sort((a, b) => a.z - b.z);
}

type Flighted = Extract<SectionInput, { kind: 'flighted' }>;

function leadMagnets(stood: Stood): readonly Magnet[] {
  const [before, after] = [neighbour(stood, -1), neighbour(stood, 1)];
  return [
    { value: stood.scene.revision.barrel.boreDiameterMm, name: words.magnets.bore },
    ...(before?.kind === 'flighted' ? [{ value: before.leadEndMm, name: words.magnets.before }] : []),
    ...(after?.kind === 'flighted' ? [{ value: after.leadStartMm, name: words.magnets.after }] : []),
  ];
}

/** The lead at one end, from a flight to where the same flight has come round; one dimension where it is even. */
function leadOf(stood: Stood, section: Flighted, end: End, tooth: Tooth | undefined): readonly Dimension[] {
  const { start, path, scene } = stood;
  const even = agree(section.leadStartMm, section.leadEndMm);
  if (even && end === 'End' && scene.manners.joined) return [];
  const key = `lead${end}Mm` as const;
  const value = section[key];
  const first = end === 'Start' ? Math.min(tooth?.z ?? start, Math.max(start, stood.end - value)) : stood.end - value;
  const to = first + value;
  const keys = ['leadStartMm', 'leadEndMm'].map((name): Path => [...path, name]);
  const base = shared(stood, key);
  return [
    {
      ...base,
      spec: even && scene.manners.joined ? { ...base.spec, label: words.lead, help: words.leadHelp } : base.spec,
      value,
      mark: { kind: 'along', from: first, to, r: scene.revision.barrel.boreDiameterMm / 2, above: true },
      grip: {
        z: end === 'Start' ? to : first,
        r: (tooth?.r ?? scene.revision.barrel.boreDiameterMm / 2) * 0.97,
        axis: 'z',
        aside: 0,
      },
      // the flight starts at the section's start, so a pull at a later flight counts all turns up to it
      valueAt: (at) => {
        if (end === 'End') return stood.end - at;
        return even && to > start ? (value * (at - start)) / (to - start) : at - first;
      },
      changes: (wanted, { joined }) => sameAt(even && joined ? keys : [[...path, key]], wanted),
      magnets: leadMagnets(stood),
      rank: 3,
    },
  ];
}

/** The flight's land, pulled at the edge of a flight. */
function landOf(stood: Stood, section: Flighted, tooth: Tooth | undefined): readonly Dimension[] {
  if (!tooth) return [];
  const { z, r } = tooth;
  const half = section.flightWidthMm / 2;
  return [
    {
      ...shared(stood, 'flightWidthMm'),
      value: section.flightWidthMm,
      mark: { kind: 'along', from: z - half, to: z + half, r, above: true },
      grip: { z: z + half, r, axis: 'z', aside: 0 },
      valueAt: (at) => 2 * (at - z),
      changes: (value) => sameAt([[...stood.path, 'flightWidthMm']], value),
      rank: 4,
    },
  ];
}

/** All dimensions of the sections; `teeth` as drawn. */
export function screwDimensions(scene: Scene, teeth: readonly Tooth[]): readonly Dimension[] {
  let end = 0;
  return scene.revision.screw.sections.flatMap((section, index): readonly Dimension[] => {
    const start = end;
    end += section.lengthMm;
    const path = [...scene.root, 'screw', 'sections', index];
    const stood: Stood = { scene, section, index, start, end, path };
    const both = [lengthOf(stood), ...rootOf(stood, 'Start'), ...rootOf(stood, 'End')];
    if (section.kind === 'plain') return both;
    const own = teeth.filter(({ z }) => z > start && z < end);
    // the second flight where there is one: the first of a screw is cut off by its end
    const tooth = own[1] && own[1].z + section.leadStartMm <= end ? own[1] : own[0];
    const width = own[2] ?? own[1] ?? own[0];
    const leads = [...leadOf(stood, section, 'Start', tooth), ...leadOf(stood, section, 'End', tooth)];
    return [...both, ...leads, ...landOf(stood, section, width)];
  });
}
