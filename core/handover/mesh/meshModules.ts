/** The hand-over modules that write bodies as triangles. */

import { ok, type Result } from '../../result.ts';
import { formatNumber } from '../../units.ts';
import { fileName } from '../names.ts';
import type { HandoverFile, HandoverModule, HandoverSource } from '../types.ts';
import { type Bodies, type Body, makeBodies } from './bodies.ts';
import { meshOptions } from './options.ts';
import { stlBytes } from './stlFile.ts';
import { threeMfBytes } from './threeMfFile.ts';

type Write = HandoverModule['write'];

const sizeText = (bytes: Uint8Array): string => `${formatNumber(bytes.length / 1e6, 3)} MB`;

/** Which design, revision and project a body is of; what tells it apart comes first, since an STL cuts the end off. */
const aboutOf = ({ project, subjects: [{ revision, design }] }: HandoverSource): string =>
  `design ${design.hash.slice(0, 12)}, ${project.invented ? 'invented, ' : ''}revision ${revision.id}, ${project.name}`;

const withSize = (
  bytes: Uint8Array,
  { facts, cautions }: Omit<Bodies, 'bodies'>,
): Omit<HandoverFile, 'name' | 'mediaType'> => ({
  bytes,
  facts: [...facts, { label: 'File', text: sizeText(bytes) }],
  cautions,
});

const writeStl: Write = async (source, values, tools, tell): Promise<Result<readonly HandoverFile[]>> => {
  const [{ design, revision }] = source.subjects;
  const made = await makeBodies(design, values, tools, tell);
  if (!made.ok) return made;
  tell(0.9, 'writing');
  const { bodies, facts, cautions } = made.value;
  const about = aboutOf(source);
  const ofPart = (part: Body['part']) =>
    facts.filter(({ label }) => label.startsWith(`${part}:`) || !label.includes(':'));
  return ok(
    bodies.map((body) => {
      const bytes = stlBytes(body, `${about}, ${body.name}`);
      const name = fileName([source.project.name, revision.id, body.name], 'stl');
      return { name, mediaType: 'model/stl', ...withSize(bytes, { facts: ofPart(body.part), cautions }) };
    }),
  );
};

const write3mf: Write = async (source, values, tools, tell): Promise<Result<readonly HandoverFile[]>> => {
  const [{ design, revision }] = source.subjects;
  const made = await makeBodies(design, values, tools, tell);
  if (!made.ok) return made;
  tell(0.9, 'writing');
  const { bodies, ...rest } = made.value;
  const metadata = {
    Title: `${source.project.name}, revision ${revision.id}: ${revision.name}`,
    Description: [aboutOf(source), ...rest.cautions].join('. '),
    Application: 'Augerwright',
    CreationDate: source.date,
  };
  const bytes = threeMfBytes(bodies, metadata, source.date);
  const only = new Set(bodies.map(({ part }) => part));
  const name = fileName([source.project.name, revision.id, only.size === 1 ? [...only][0] : 'parts'], '3mf');
  return ok([{ name, mediaType: 'model/3mf', ...withSize(bytes, rest) }]);
};

/** STL, one file a body. */
export const stlModule: HandoverModule = {
  id: 'stl',
  label: 'Mesh (STL)',
  help: 'Triangles in millimetres, one file for each body. Read by everything; it keeps no unit and no name.',
  extension: 'stl',
  mediaType: 'model/stl',
  group: 'model',
  needs: 'design',
  several: false,
  options: meshOptions,
  write: writeStl,
};

/** 3MF, all bodies in one file. */
export const threeMfModule: HandoverModule = {
  id: '3mf',
  label: 'Mesh (3MF)',
  help: 'Triangles with unit, names and origin, all bodies in one file. Take it rather than STL where it can be read.',
  extension: '3mf',
  mediaType: 'model/3mf',
  group: 'model',
  needs: 'design',
  several: false,
  options: meshOptions,
  write: write3mf,
};
