/** The one door from stored data to a design: everything behind it may rely on what is checked here. */

import { contentHash } from '../hash.ts';
import { designMaterial } from '../material/designMaterial.ts';
import { colourIssues, rangeIssues } from '../project/crossChecks.ts';
import { type Material, materialSchema } from '../project/materialSchema.ts';
import { type Project, printSchema, processSchema, type Revision, revisionSchema } from '../project/schema.ts';
import { checkSchema } from '../project/schemaIssues.ts';
import { fail, type Issue, type Result } from '../result.ts';
import { barrelIssues } from './checkBarrel.ts';
import { driveIssues } from './checkDrive.ts';
import { screwIssues } from './checkScrew.ts';
import { tipIssues } from './checkTip.ts';
import { barrelOf, driveOf, hopperOf, nozzleOf, printOf, processOf, screwOf } from './convert.ts';
import type { Path } from './issueList.ts';
import type { Design, DesignMaterial } from './types.ts';

/** Index of the entry with an id, or an issue naming the ids there are. */
function indexOf(list: readonly { readonly id: string }[], id: string, what: string, path: Path): Result<number> {
  const index = list.findIndex((item) => item.id === id);
  if (index >= 0) return { ok: true, value: index };
  const allowed = `one of: ${list.map((item) => item.id).join(', ')}`;
  return fail({
    path,
    code: 'unknown-id',
    message: `No ${what} has this id.`,
    value: id,
    allowed,
    remedy: `Name a ${what} of this project.`,
  });
}

const issuesOf = (result: Result<unknown>): readonly Issue[] => (result.ok ? [] : result.issues);

/** Faults of shape and range: the editor may have typed anything since the file was read. */
function shapeIssues(
  project: Project,
  revision: Revision,
  material: Material,
  at: Path,
  materialAt: Path,
): readonly Issue[] {
  return [
    ...issuesOf(checkSchema(revisionSchema, revision, at)),
    ...issuesOf(checkSchema(materialSchema, material, materialAt)),
    ...issuesOf(checkSchema(processSchema, project.process, ['process'])),
    ...issuesOf(checkSchema(printSchema, project.print, ['print'])),
  ];
}

function geometryIssues(revision: Revision, path: Path): readonly Issue[] {
  const screw = screwIssues(revision, path);
  return [
    ...screw,
    ...(screw.length > 0 ? [] : tipIssues(revision, path)),
    ...barrelIssues(revision, path),
    ...driveIssues(revision, path),
  ];
}

/**
 * Hash of everything a prediction of this revision depends on: its machine, material, process and print demand.
 * The revision's name, note, date, lock and parent stay out, so that renaming leaves results valid.
 * @returns 16 hex digits
 */
export function designHash(
  revision: Revision,
  material: Material,
  project: Pick<Project, 'process' | 'print'>,
): string {
  const { name: _n, note: _o, date: _d, locked: _l, parent: _p, ...machine } = revision;
  return contentHash({ machine, material, process: project.process, print: project.print });
}

/** The only place that makes a Design; the brand holds because every check has passed. */
function build(project: Project, revision: Revision, material: Material, converted: DesignMaterial): Design {
  const design: Omit<Design, keyof Branded> = {
    revisionId: revision.id,
    revisionName: revision.name,
    hash: designHash(revision, material, project),
    screw: screwOf(revision),
    barrel: barrelOf(revision),
    nozzle: nozzleOf(revision),
    hopper: hopperOf(revision),
    drive: driveOf(revision),
    material: converted,
    process: processOf(project),
    print: printOf(project),
  };
  return design as Design;
}

/** The brand's key alone. */
type Branded = Pick<Design, Extract<keyof Design, symbol>>;

/**
 * Validates one revision of a project and turns it into SI.
 * @param project project whose shape was checked when it was read; ranges are checked again
 * @param revisionId id of the revision
 * @returns the design (m, K, Pa, rev/s, rad), or every issue found, with paths from the project's root
 */
export function validateDesign(project: Project, revisionId: string): Result<Design> {
  const found = indexOf(project.revisions, revisionId, 'revision', ['revisions']);
  if (!found.ok) return found;
  const path: Path = ['revisions', found.value];
  const revision = project.revisions[found.value] as Revision;
  const source = indexOf(project.materials, revision.materialId, 'material', [...path, 'materialId']);
  if (!source.ok) return source;
  const materialPath: Path = ['materials', source.value];
  const stored = project.materials[source.value] as Material;
  const shape = shapeIssues(project, revision, stored, path, materialPath);
  if (shape.length > 0) return fail(...shape);
  const material = designMaterial(stored, materialPath);
  const issues = [
    ...geometryIssues(revision, path),
    ...rangeIssues(stored, materialPath),
    ...colourIssues(stored, materialPath),
    ...issuesOf(material),
  ];
  if (issues.length > 0 || !material.ok) return fail(...issues);
  return { ok: true, value: build(project, revision, stored, material.value) };
}
