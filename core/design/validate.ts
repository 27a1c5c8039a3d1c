/** The one door from stored data to a design: everything behind it may rely on what is checked here. */

import { contentHash } from '../hash.ts';
import { designMaterial } from '../material/designMaterial.ts';
import { withoutConsequences } from '../project/consequences.ts';
import { colourIssues, rangeIssues } from '../project/crossChecks.ts';
import { type Material, materialSchema } from '../project/materialSchema.ts';
import { type Project, printSchema, processSchema, type Revision, revisionSchema } from '../project/schema.ts';
import { checkSchema } from '../project/schemaIssues.ts';
import { fail, type Issue, type Result } from '../result.ts';
import { calibrated } from './calibrate.ts';
import { geometryIssues } from './checkGeometry.ts';
import { printIssues } from './checkPrint.ts';
import { barrelOf, calibrationOf, driveOf, hopperOf, nozzleOf, printOf, processOf, screwOf } from './convert.ts';
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
    value: id === '' ? '""' : id,
    allowed,
    remedy: `Name a ${what} of this project.`,
  });
}

const issuesOf = (result: Result<unknown>): readonly Issue[] => (result.ok ? [] : result.issues);

/** Faults of the material: of shape, else of its values between each other. */
function materialOf(stored: Material, path: Path): Result<DesignMaterial> {
  const shape = checkSchema(materialSchema, stored, path);
  const between = [...rangeIssues(stored, path), ...colourIssues(stored, path)];
  if (!shape.ok) return fail(...shape.issues, ...withoutConsequences(between, shape.issues));
  const made = designMaterial(stored, path);
  return between.length > 0 ? fail(...between, ...issuesOf(made)) : made;
}

/**
 * Faults of a machine alone, whatever it is run with: values outside the file's ranges, and parts that do not fit.
 * @param path path of the revision
 * @returns one issue per fault, with paths from the project's root
 */
export const revisionIssues = (revision: Revision, path: readonly (string | number)[]): readonly Issue[] => [
  ...issuesOf(checkSchema(revisionSchema, revision, path)),
  ...geometryIssues(revision, path),
];

/** Faults of the machine, process and print: the editor may have typed anything since the file was read. */
function machineIssues(project: Project, revision: Revision, path: Path): readonly Issue[] {
  return [
    ...revisionIssues(revision, path),
    ...issuesOf(checkSchema(processSchema, project.process, ['process'])),
    ...issuesOf(checkSchema(printSchema, project.print, ['print'])),
    ...printIssues(project.print),
  ];
}

/**
 * Hash of everything a prediction of this revision depends on: its machine, material, process and print demand.
 * The revision's name, note, date, lock and parent stay out, so that renaming leaves results valid.
 * @returns 16 hex digits
 */
function designHash(
  revision: Revision,
  material: Material,
  project: Pick<Project, 'process' | 'print' | 'calibrations'>,
): string {
  const { name: _n, note: _o, date: _d, locked: _l, parent: _p, ...machine } = revision;
  const calibration = project.calibrations?.find(({ id }) => id === revision.calibrationId);
  const factors = calibration ? { factors: calibration.factors } : {};
  return contentHash({ machine, material, process: project.process, print: project.print, ...factors });
}

/** The only place that makes a Design; the brand holds because every check has passed. */
function build(project: Project, revision: Revision, material: Material, converted: DesignMaterial): Design {
  const design: Omit<Design, keyof Branded> = {
    revisionId: revision.id,
    revisionName: revision.name,
    invented: project.invented,
    hash: designHash(revision, material, project),
    screw: screwOf(revision),
    barrel: barrelOf(revision),
    nozzle: nozzleOf(revision),
    hopper: hopperOf(revision),
    drive: driveOf(revision),
    material: converted,
    process: processOf(project),
    print: printOf(project),
    calibration: calibrationOf(project, revision),
  };
  return calibrated(design as Design);
}

/** The brand's key alone. */
type Branded = Pick<Design, Extract<keyof Design, symbol>>;

/** A revision that names a calibration must name one of the project's. */
function calibrationIssues({ calibrations = [] }: Project, { calibrationId }: Revision, path: Path): readonly Issue[] {
  if (calibrationId === undefined) return [];
  return issuesOf(indexOf(calibrations, calibrationId, 'calibration', [...path, 'calibrationId']));
}

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
  const machine = [...machineIssues(project, revision, path), ...calibrationIssues(project, revision, path)];
  if (!source.ok) return fail(...source.issues, ...machine);
  const materialPath: Path = ['materials', source.value];
  const stored = project.materials[source.value] as Material;
  const material = materialOf(stored, materialPath);
  if (machine.length > 0 || !material.ok) return fail(...machine, ...issuesOf(material));
  return { ok: true, value: build(project, revision, stored, material.value) };
}
