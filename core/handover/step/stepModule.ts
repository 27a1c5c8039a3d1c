/** The hand-over module that writes boundary representations: every file is read back and checked before it is given. */

import { strFromU8 } from 'fflate';
import type { Design } from '../../design/types.ts';
import { fail, type Issue, ok, type Result } from '../../result.ts';
import { formatNumber, formatQuantity } from '../../units.ts';
import { utf8 } from '../bytes.ts';
import { choiceOf } from '../check.ts';
import { fileName } from '../names.ts';
import type { HandoverModule, HandoverOption, HandoverSource } from '../types.ts';
import { buildPart, type PartBody, type PartName } from './bodies.ts';
import type { BrepKernel } from './kernel.ts';
import type { BodyFigures } from './sewn.ts';
import { readStep, type StepSchema, volumeTolerance, withHead, writeStep } from './stepFile.ts';

const allParts: readonly PartName[] = ['screw', 'barrel', 'nozzle'];

const options: readonly HandoverOption[] = [
  {
    id: 'part',
    label: 'Part',
    help: 'All three stand where they are in the machine, z along the axis from where the bore begins.',
    kind: 'choice',
    choices: [...allParts, 'all'].map((id) => ({ id, label: id === 'all' ? 'Screw, barrel and nozzle' : id })),
    start: 'screw',
  },
  {
    id: 'schema',
    label: 'Protocol',
    help: 'AP214 is read by every program that reads STEP; AP242 is its successor.',
    kind: 'choice',
    choices: [
      { id: 'AP214', label: 'AP214' },
      { id: 'AP242', label: 'AP242' },
    ],
    start: 'AP214',
  },
];

/** A refusal that names the part and the reason. */
const refused = (part: string, reason: string): Issue => ({
  path: ['step', part],
  code: 'step-refused',
  message: `No STEP file of the ${part}: ${reason}.`,
  remedy:
    'A solid that does not pass its check is not handed over. Change the section or end it speaks of, or hand over a mesh.',
});

/** Words of whatever a kernel throws: it also throws bare numbers. */
const thrown = (fault: unknown): string =>
  fault instanceof Error ? `the solid kernel says ${fault.message}` : 'the solid kernel gave up';

function built(kernel: BrepKernel, design: Design, part: PartName): Result<PartBody> {
  try {
    const body = buildPart(kernel, design, part);
    return typeof body === 'string' ? fail(refused(part, body)) : ok(body);
  } catch (fault) {
    return fail(refused(part, thrown(fault)));
  }
}

const relative = (volume: number, analytic: number): number => volume / analytic - 1;

/** What is wrong with what was read back; null where nothing is. */
export function faultOf(
  bodies: readonly Pick<PartBody, 'part' | 'analyticVolume'>[],
  read: BodyFigures | null,
): Issue | null {
  const names = bodies.map(({ part }) => part).join(', ');
  if (!read) return refused(names, 'the file cannot be read back');
  if (read.volumes.length !== bodies.length) {
    return refused(names, `read back, the file has ${read.volumes.length} solids in place of ${bodies.length}`);
  }
  if (!read.valid) return refused(names, 'read back, a face or edge of it is not valid');
  for (const [i, { part, analyticVolume }] of bodies.entries()) {
    const off = relative(read.volumes[i] as number, analyticVolume);
    if (Math.abs(off) <= volumeTolerance) continue;
    return refused(
      part,
      `its volume is off by ${formatNumber(100 * off, 3)} %, ${100 * volumeTolerance} % are allowed`,
    );
  }
  return null;
}

/** Facts of each part, then of the file. */
function factsOf(bodies: readonly PartBody[], read: BodyFigures, bytes: number): { label: string; text: string }[] {
  const volumes = bodies.flatMap(({ part, analyticVolume }, i) => {
    const volume = read.volumes[i] as number;
    return [
      { label: `${part}: volume, read back`, text: formatQuantity(volume, 'mm³', 8) },
      { label: `${part}: volume by geometry`, text: formatQuantity(analyticVolume, 'mm³', 8) },
      { label: `${part}: relative difference`, text: formatNumber(relative(volume, analyticVolume), 2) },
    ];
  });
  return [
    ...volumes,
    { label: 'Faces', text: String(read.faces) },
    { label: 'Check', text: `read back: ${bodies.length === 1 ? 'one solid' : `${bodies.length} solids`}, valid` },
    { label: 'File', text: `${formatNumber(bytes / 1e6, 3)} MB` },
  ];
}

/** The text of a file, or why there is none. */
function textOf(
  kernel: BrepKernel,
  source: HandoverSource,
  bodies: readonly PartBody[],
  schema: StepSchema,
  name: string,
) {
  const { project, subjects, date } = source;
  const [{ revision, design }] = subjects;
  const named = bodies.map(({ part, shape }) => ({ name: `${revision.name}, ${part}`, shape }));
  const bytes = writeStep(kernel, named, schema);
  if (typeof bytes === 'string') return fail(refused(bodies.map(({ part }) => part).join(', '), bytes));
  const description = `${project.name}, revision ${revision.id}, design ${design.hash.slice(0, 12)}${project.invented ? ', invented' : ''}`;
  return ok(utf8(withHead(strFromU8(bytes), { fileName: name, description, date })));
}

/** Said with every file. */
const cautions: readonly string[] = [
  'The solid is the shape that was predicted: no centre holes, threads, keys, run-outs, flanges or tolerances.',
  'Where the lead varies, the flight follows its definition across the axis; a machine that cuts along the axis with one tool differs slightly there.',
];

const write: HandoverModule['write'] = async (source, values, tools, tell) => {
  const part = choiceOf<PartName | 'all'>(values, 'part');
  const schema = choiceOf<StepSchema>(values, 'schema');
  const [{ design, revision }] = source.subjects;
  tell(0, 'loading the solid kernel');
  const kernel = (await tools.brep()) as BrepKernel;
  const wanted = part === 'all' ? allParts : [part];
  const bodies: PartBody[] = [];
  for (const [i, each] of wanted.entries()) {
    tell(0.2 + (0.4 * i) / wanted.length, `building the ${each}`);
    const body = built(kernel, design, each);
    if (!body.ok) return body;
    bodies.push(body.value);
  }
  tell(0.6, 'writing');
  const name = fileName([source.project.name, revision.id, part === 'all' ? 'parts' : part], 'step');
  const bytes = textOf(kernel, source, bodies, schema, name);
  if (!bytes.ok) return bytes;
  tell(0.8, 'reading back');
  const read = readStep(kernel, bytes.value);
  const fault = faultOf(bodies, read);
  if (fault || !read) return fail(fault ?? refused(part, 'the file cannot be read back'));
  const facts = factsOf(bodies, read, bytes.value.length);
  return ok([{ name, mediaType: 'model/step', bytes: bytes.value, facts, cautions }]);
};

/** STEP, as true faces. */
export const stepModule: HandoverModule = {
  id: 'step',
  label: 'Solid (STEP)',
  help: 'True solids with smooth faces in millimetres, for drawing programs and machining. Read back and checked before it is offered.',
  extension: 'step',
  mediaType: 'model/step',
  group: 'model',
  needs: 'design',
  several: false,
  options,
  write,
};
