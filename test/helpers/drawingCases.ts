/** Designs whose drawings are looked at and tested: the examples, and odd ones made from them. */

import { validateDesign } from '../../core/design/validate.ts';
import { buildDrawing } from '../../core/handover/drawing/drawing.ts';
import type { Drawing } from '../../core/handover/drawing/model.ts';
import { drawingOptions, readSetting } from '../../core/handover/drawing/options.ts';
import type { HandoverSource, HandoverValues } from '../../core/handover/types.ts';
import type { Project, Revision } from '../../core/project/schema.ts';
import { exampleNames, expectOk, loadExample } from './projects.ts';

/** One drawing. */
export interface DrawingCase {
  readonly name: string;
  readonly project: Project;
  readonly revisionId: string;
  readonly values: HandoverValues;
}

/** Starting values of all options. */
export const startValues: HandoverValues = Object.fromEntries(drawingOptions.map(({ id, start }) => [id, start]));

/** What modules write from, of one revision and without prediction. */
export function sourceOf(project: Project, revisionId: string): HandoverSource {
  const revision = project.revisions.find(({ id }) => id === revisionId) as Revision;
  const design = expectOk(validateDesign(project, revisionId));
  return { project, subjects: [{ revision, design, prediction: null, presentation: null }], date: '2026-11-28' };
}

/** The drawing of a case. */
export const drawnCase = ({ project, revisionId, values }: DrawingCase): Drawing =>
  expectOk(buildDrawing(readSetting(sourceOf(project, revisionId), { ...startValues, ...values })));

/** The demo's last revision with a change to it. */
export function oddCase(name: string, values: HandoverValues, change: (revision: Revision) => void): DrawingCase {
  const project = loadExample('demo');
  const revision = project.revisions.find(({ id }) => id === 'C') as Revision;
  change(revision);
  return { name, project, revisionId: 'C', values };
}

const examples = exampleNames.flatMap((example) => {
  const project = loadExample(example);
  return project.revisions.flatMap(({ id }) =>
    ['A4', 'A3'].map(
      (size): DrawingCase => ({ name: `${example}-${id}-${size}`, project, revisionId: id, values: { size } }),
    ),
  );
});

/** Every length of the machine times a factor, but not the drive. */
function scaled(revision: Revision, factor: number): void {
  const grow = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(grow);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, each]) => [
        key,
        key.endsWith('Mm') && typeof each === 'number' ? Number((each * factor).toFixed(3)) : grow(each),
      ]),
    );
  };
  for (const part of ['screw', 'barrel', 'nozzle', 'hopper'] as const)
    Object.assign(revision, { [part]: grow(revision[part]) });
}

/** Sections of equal length in place of the demo's. */
function splitSections(revision: Revision, count: number): void {
  const [first] = revision.screw.sections;
  if (first?.kind !== 'flighted') throw new Error('the demo begins flighted');
  revision.screw.sections = Array.from({ length: count }, (_, i) =>
    i % 3 === 2
      ? {
          kind: 'plain' as const,
          lengthMm: 160 / count,
          rootDiameterStartMm: 9 + 0.02 * i,
          rootDiameterEndMm: 9 + 0.02 * i,
        }
      : {
          ...first,
          name: `part ${i + 1}`,
          lengthMm: 160 / count,
          rootDiameterStartMm: 7 + 0.05 * i,
          rootDiameterEndMm: 7.05 + 0.05 * i,
        },
  );
  const last = revision.screw.sections[count - 1];
  if (last) last.rootDiameterEndMm = 10.4;
}

/** A machine `factor` times as long at the same diameters. */
function stretched(revision: Revision, factor: number): void {
  for (const section of revision.screw.sections) section.lengthMm *= factor;
  const { barrel } = revision;
  barrel.lengthMm = 160 * factor + 2;
  const last = barrel.zones[barrel.zones.length - 1];
  if (last) last.endMm = barrel.lengthMm;
}

/** What a machinist may meet beside the examples. */
export const oddCases: readonly DrawingCase[] = [
  oddCase('bore8', { size: 'A4' }, (revision) => scaled(revision, 8 / 14)),
  oddCase('bore25', { size: 'A4', projection: 'third' }, (revision) => scaled(revision, 25 / 14)),
  oddCase('double', { size: 'ansiB', projection: 'third' }, (revision) => {
    revision.screw.hand = 'left';
    for (const section of revision.screw.sections) if (section.kind === 'flighted') section.starts = 2;
  }),
  oddCase('vflank', { size: 'ansiA' }, (revision) => {
    for (const section of revision.screw.sections) if (section.kind === 'flighted') section.flankAngleDeg = 20;
  }),
  oddCase('ten', { size: 'A4' }, (revision) => splitSections(revision, 10)),
  oddCase('forty', { size: 'A4' }, (revision) => splitSections(revision, 40)),
  oddCase('long', { size: 'A4' }, (revision) => stretched(revision, 8)),
  oddCase('pin', { size: 'A2' }, (revision) => {
    revision.screw.tip = { kind: 'hemisphere', pinDiameterMm: 3, pinLengthMm: 2 };
  }),
];

/** All of them. */
export const drawingCases: readonly DrawingCase[] = [...examples, ...oddCases];
