/** Inputs that move several numbers of a screw or barrel together. Units of the file. */

import type { Revision, SectionInput } from '../project/schema.ts';
import { onStep } from './steps.ts';

type Flighted = Extract<SectionInput, { kind: 'flighted' }>;

/** Several numbers moved as one. */
export interface JointInput {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly step: number;
  /** the value now, or null where the machine has no such thing */
  read(revision: Revision): number | null;
  /** the revision with the value; `base` tells what belongs together, so that changes made before do not */
  write(revision: Revision, value: number, base: Revision): Revision;
  /** places that are written, from the revision on */
  touches(revision: Revision): readonly string[];
  /** places beside these that what is written depends on; a joint input that writes them comes before this one */
  reads?(revision: Revision): readonly string[];
  /** writes other values than asked for, because parts are made in steps: `read` tells the one that is built */
  readonly rounds?: true;
}

/** A root diameter at one end of a section. */
interface RootEnd {
  readonly section: number;
  readonly key: 'rootDiameterStartMm' | 'rootDiameterEndMm';
}

/** Step of turned diameters and milled widths, mm. */
const turned = 0.05;

const flightedOf = ({ screw }: Revision): readonly (readonly [number, Flighted])[] =>
  screw.sections.flatMap((section, i) => (section.kind === 'flighted' ? [[i, section] as const] : []));

const withSections = (
  revision: Revision,
  change: (section: SectionInput, index: number) => SectionInput,
): Revision => ({
  ...revision,
  screw: { ...revision.screw, sections: revision.screw.sections.map(change) },
});

/** Ends of flighted roots, from the feed on. */
const rootEnds = (revision: Revision): readonly (RootEnd & { readonly value: number })[] =>
  flightedOf(revision).flatMap(([section, { rootDiameterStartMm, rootDiameterEndMm }]) => [
    { section, key: 'rootDiameterStartMm' as const, value: rootDiameterStartMm },
    { section, key: 'rootDiameterEndMm' as const, value: rootDiameterEndMm },
  ]);

/** Ends that share the root of the first one, without a gap. */
function alike<T extends { readonly value: number }>(ends: readonly T[]): readonly T[] {
  const other = ends.findIndex(({ value }) => value !== ends[0]?.value);
  return other < 0 ? ends : ends.slice(0, other);
}

const feedEnds = (revision: Revision) => alike(rootEnds(revision));
const meteringEnds = (revision: Revision) => alike([...rootEnds(revision)].reverse());

function withRoots(revision: Revision, ends: readonly RootEnd[], value: number): Revision {
  return withSections(revision, (section, index) => {
    const keys = ends.filter((end) => end.section === index).map(({ key }) => [key, value]);
    return { ...section, ...Object.fromEntries(keys) };
  });
}

const placesOf = (ends: readonly RootEnd[]): readonly string[] =>
  ends.map(({ section, key }) => `screw.sections[${section}].${key}`);

/** Whether the root changes anywhere, so that feed and metering are two things. */
const tapers = (revision: Revision): boolean => feedEnds(revision).length < rootEnds(revision).length;

const roots = (
  id: string,
  label: string,
  ends: (revision: Revision) => readonly (RootEnd & { readonly value: number })[],
  offered: (revision: Revision) => boolean,
): JointInput => ({
  id,
  label,
  unit: 'mm',
  step: turned,
  read: (revision) => (offered(revision) ? (ends(revision)[0]?.value ?? null) : null),
  write: (revision, value, base) => withRoots(revision, ends(base), value),
  touches: (revision) => placesOf(ends(revision)),
});

/** Depth of the channel at a root, bore to root, mm. */
const depth = (revision: Revision, rootMm: number): number => (revision.barrel.boreDiameterMm - rootMm) / 2;

const compression: JointInput = {
  id: 'joint.compression',
  label: 'Compression by depth, the feed root moved',
  unit: '',
  step: 0.05,
  read(revision) {
    const feed = feedEnds(revision)[0];
    const metering = meteringEnds(revision)[0];
    if (!feed || !metering || !tapers(revision)) return null;
    return depth(revision, feed.value) / depth(revision, metering.value);
  },
  write(revision, value, base) {
    const last = meteringEnds(base)[0];
    const metering = last
      ? rootEnds(revision).find(({ section, key }) => section === last.section && key === last.key)
      : null;
    const deep = value * depth(revision, metering?.value ?? 0);
    return withRoots(revision, feedEnds(base), onStep(revision.barrel.boreDiameterMm - 2 * deep, turned));
  },
  touches: (revision) => placesOf(feedEnds(revision)),
  reads: (revision) => ['barrel.boreDiameterMm', ...placesOf(meteringEnds(revision))],
  rounds: true,
};

/** One number that every flighted section has. */
const ofAll = (id: string, label: string, key: 'flightWidthMm' | 'rootFilletMm'): JointInput => ({
  id,
  label,
  unit: 'mm',
  step: turned,
  read: (revision) => flightedOf(revision)[0]?.[1][key] ?? null,
  write: (revision, value) =>
    withSections(revision, (section) => (section.kind === 'flighted' ? { ...section, [key]: value } : section)),
  touches: (revision) => flightedOf(revision).map(([i]) => `screw.sections[${i}].${key}`),
});

const lead: JointInput = {
  id: 'joint.lead',
  label: 'Lead of all sections, in proportion',
  unit: 'mm',
  step: 0.1,
  read: (revision) => flightedOf(revision)[0]?.[1].leadStartMm ?? null,
  write(revision, value) {
    const ratio = value / (lead.read(revision) ?? value);
    const moved = (mm: number) => onStep(mm * ratio, 0.05);
    return withSections(revision, (section) =>
      section.kind === 'flighted'
        ? { ...section, leadStartMm: moved(section.leadStartMm), leadEndMm: moved(section.leadEndMm) }
        : section,
    );
  },
  touches: (revision) =>
    flightedOf(revision).flatMap(([i]) => [`screw.sections[${i}].leadStartMm`, `screw.sections[${i}].leadEndMm`]),
  rounds: true,
};

const temperature: JointInput = {
  id: 'joint.temperature',
  label: 'Temperature of all heated zones and the nozzle, shifted by',
  unit: 'K',
  step: 1,
  read: () => 0,
  write: ({ barrel, nozzle, ...revision }, value) => ({
    ...revision,
    barrel: {
      ...barrel,
      zones: barrel.zones.map((zone) => (zone.kind === 'heated' ? { ...zone, setTempC: zone.setTempC + value } : zone)),
    },
    nozzle: { ...nozzle, setTempC: nozzle.setTempC + value },
  }),
  touches: ({ barrel }) => [
    ...barrel.zones.flatMap((zone, i) => (zone.kind === 'heated' ? [`barrel.zones[${i}].setTempC`] : [])),
    'nozzle.setTempC',
  ],
};

/** All of them, in the order in which they are written: what reads another's numbers comes after it. */
export const jointInputs: readonly JointInput[] = [
  roots('joint.meteringRoot', 'Root diameter of the whole metering part', meteringEnds, () => true),
  roots('joint.feedRoot', 'Root diameter of the whole feed part', feedEnds, tapers),
  compression,
  lead,
  ofAll('joint.flightWidth', 'Flight width of all sections', 'flightWidthMm'),
  ofAll('joint.fillet', 'Root fillet of all sections', 'rootFilletMm'),
  temperature,
];

/** The joint input of an id. */
export const jointInput = (id: string): JointInput | undefined => jointInputs.find((joint) => joint.id === id);

/** The value that a revision has of an input once it is asked for: the same, but where parts are made in steps. */
export function builtValue(revision: Revision, id: string, asked: number): number {
  const joint = jointInput(id);
  const built = joint?.rounds ? joint.read(joint.write(revision, asked, revision)) : asked;
  return built !== null && Number.isFinite(built) ? Number(built.toPrecision(6)) : asked;
}
