/** Project and material files, up to a prediction of what is accepted. */

import { benchContext } from '../../../core/bench/csvTypes.ts';
import { faultyFileIssues } from '../../../core/design/inspect.ts';
import { revisionIssues, validateDesign } from '../../../core/design/validate.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { designMaterial } from '../../../core/material/designMaterial.ts';
import { predict } from '../../../core/prediction/predict.ts';
import { predictionJson } from '../../../core/present/json.ts';
import { fieldRange } from '../../../core/project/fieldRange.ts';
import { materialFileText, parseMaterialText } from '../../../core/project/materialFile.ts';
import { parseProject } from '../../../core/project/parse.ts';
import type { Project } from '../../../core/project/schema.ts';
import { serializeProject } from '../../../core/project/serialize.ts';
import { assetNames, assetText } from '../assets.ts';
import { nonFinite } from '../finite.ts';
import { mutatedText, mutatedTree, pickOf, type Recipe, type Step } from './mutate.ts';
import { checkIssues, checkPlain, type Outcome, soundly } from './sound.ts';
import type { Target } from './targetTypes.ts';
import { edited, type Place, placesOf, type Tree, textOf, treeAt, treeOf } from './tree.ts';

const examples: readonly unknown[] = assetNames('examples').map((name) => JSON.parse(assetText(`examples/${name}`)));
const materials: readonly string[] = assetNames('materials').map((name) => assetText(`materials/${name}`));

/** An example with one revision, its material and a few trials: as telling as the whole, and quicker. */
function lean(project: unknown, index: number): unknown {
  const { revisions, materials: all, benchLog, ...rest } = project as Project;
  const revision = pickOf(revisions, index);
  const own = all.filter(({ id }) => id === revision.materialId);
  const trials = benchLog.filter((t) => t.revisionId === revision.id && t.materialId === revision.materialId);
  const { calibrationId: _, ...free } = revision;
  return {
    ...rest,
    activeRevision: revision.id,
    revisions: [{ ...free, parent: null }],
    materials: own,
    benchLog: trials.slice(0, 2),
  };
}

const bases = examples.flatMap((each) => [lean(each, 0), lean(each, 2)]);
const trees: readonly Tree[] = [...bases, ...examples].map(treeOf);
const materialTrees: readonly Tree[] = materials.map((text) => treeOf(JSON.parse(text)));

/** Steps of even kinds go to the tree, the others to the text. */
const forTree = ([kind]: Step): boolean => kind % 4 !== 3;

function mixedText(tree: Tree, other: Tree, { steps }: Recipe): string {
  const changed = mutatedTree(
    tree,
    steps.filter(forTree).map(([kind, where, what]) => [kind >> 2, where, what] as const),
    other,
  );
  const rest = steps.filter((step) => !forTree(step)).map(([kind, where, what]) => [kind >> 2, where, what] as const);
  return mutatedText(textOf(changed), rest, textOf(other));
}

/** Unbound capacities are told as such. */
const unbound = /^capacities\.\d+\.(volumeFlow|reserve)$/;

function predictAll(project: Project, deep: boolean): Outcome {
  let outcome: Outcome = 'refused';
  for (const { id } of project.revisions.slice(0, 2)) {
    const design = soundly(validateDesign(project, id));
    if (!design) continue;
    outcome = 'accepted';
    const stations = buildStations(design, 4);
    const wrong = nonFinite(stations);
    if (wrong.length > 0) throw new Error(`stations: ${wrong.slice(0, 3).join(', ')}`);
    if (!deep) continue;
    const prediction = predict(design, { curvePoints: 2, stationsPerTurn: 4 });
    const bad = [...nonFinite(prediction, unbound), ...nonFinite(predictionJson(prediction))];
    if (bad.length > 0) throw new Error(`prediction: ${bad.slice(0, 4).join(', ')}`);
  }
  return outcome;
}

function readProject(text: string, deep: boolean): Outcome {
  const parsed = parseProject(text);
  if (!parsed.ok) {
    checkIssues(parsed.issues);
    if (deep) checkIssues(faultyFileIssues(text));
    return 'refused';
  }
  checkPlain(parsed.value);
  if (deep || text.length % 4 === 0) saveAndReadBack(parsed.value);
  return predictAll(parsed.value, deep);
}

function saveAndReadBack(project: Project): void {
  const saved = serializeProject(project);
  const again = parseProject(saved);
  if (!again.ok || serializeProject(again.value) !== saved)
    throw new Error('what was accepted cannot be saved and read back');
  benchContext(project, project.activeRevision);
  for (const revision of project.revisions.slice(0, 2)) revisionIssues(revision, ['revisions', 0]);
}

const oldNozzle: (readonly [string, Tree])[] = [
  ['"entryAngleDeg"', '60'],
  ['"orificeDiameterMm"', '1'],
  ['"landLengthMm"', '1.5'],
];

/** Speeds in rev/s and the nozzle as three numbers, as before the first release. */
function aged(tree: Tree): Tree {
  const rename: Readonly<Record<string, string>> = {
    '"screwSpeedRpm"': '"screwSpeedRevPerS"',
    '"speedRpm"': '"speedRevPerS"',
  };
  const walk = (node: Tree): Tree => {
    if (typeof node === 'string') return node;
    if ('list' in node) return { list: node.list.map(walk) };
    return {
      entries: node.entries.flatMap(([key, item]): (readonly [string, Tree])[] => {
        if (key === '"version"') return [[key, '0']];
        if (key === '"segments"') return oldNozzle;
        const speed = rename[key];
        return [speed ? [speed, String(Number(item) / 60)] : [key, walk(item)]];
      }),
    };
  };
  return walk(tree);
}

/** Numbers that a place of the format just lets in. */
function edgeOf(document: unknown, place: Place, what: number): string | null {
  const range = fieldRange(document, place);
  if (!range) return null;
  const [least, most] = [range.least ?? -1e300, range.most ?? 1e300];
  const share = ((what >>> 4) % 1001) / 1000;
  const between = least + (most - least) * share;
  const byRatio = Math.sign(most) * Math.max(Math.abs(least), most * 1e-6) ** (1 - share) * Math.abs(most) ** share;
  const near = [
    least,
    most,
    between,
    byRatio,
    byRatio,
    Math.min(most, Math.max(least, 1e-320)),
    least + (most - least) * 1e-12,
  ];
  const value = pickOf(near, what);
  const whole = range.whole ? Math.round(value) : value;
  return least === 0 && what % 31 === 30 ? '-0' : String(whole);
}

function leafAt(tree: Tree, place: Place): string {
  const leaf = treeAt(tree, place);
  return typeof leaf === 'string' ? leaf : '';
}

const numberPlaces = trees.map((tree) => placesOf(tree).filter((place) => /^-?\d/.test(leafAt(tree, place))));

/** Numbers only, each at or near an end of its range. */
function edgeText({ pick, steps }: Recipe): string {
  const at = pick % bases.length;
  let tree = trees[at] as Tree;
  for (const [, where, what] of steps) {
    const place = pickOf(numberPlaces[at] ?? [], where);
    const edge = edgeOf(bases[at], place, what);
    if (edge !== null) tree = edited(tree, place, (raw) => [[raw, edge]]);
  }
  return textOf(tree);
}

function readMaterial(text: string, deep: boolean): Outcome {
  const material = soundly(parseMaterialText(text));
  if (!material) return 'refused';
  checkPlain(material);
  if (!parseMaterialText(materialFileText(material)).ok) throw new Error('a material cannot be saved and read back');
  const made = soundly(designMaterial(material, ['material']));
  if (!made) return 'refused';
  const bad = deep ? nonFinite(made) : [];
  if (bad.length > 0) throw new Error(`material: ${bad.slice(0, 3).join(', ')}`);
  return 'accepted';
}

/** The readers. */
export const projectTargets: readonly Target[] = [
  {
    name: 'project',
    share: 14,
    make: (recipe) => mixedText(pickOf(trees, recipe.pick), pickOf(trees, recipe.pick >>> 8), recipe),
    run: readProject,
  },
  { name: 'project, numbers at their ends', share: 4, make: edgeText, run: readProject },
  {
    name: 'project of version 0',
    share: 5,
    make: (recipe) => mixedText(aged(pickOf(trees, recipe.pick)), pickOf(trees, recipe.pick >>> 8), recipe),
    run: readProject,
  },
  {
    name: 'material',
    share: 8,
    make: (recipe) => mixedText(pickOf(materialTrees, recipe.pick), pickOf(trees, recipe.pick >>> 8), recipe),
    run: readMaterial,
  },
];
