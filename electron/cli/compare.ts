/** `compare FILE REV REV... [--json] [--solved]`: revisions side by side, and which is better in what. */

import { comparePredictions, comparisonJson, comparisonTable, type Issue } from '../../core/index.ts';
import { type Command, refuse, status, tellUnknown } from './command.ts';
import { readWords } from './options.ts';
import { predictAll, solvedHint } from './predictAll.ts';
import { readDesigns, readProject } from './readDesign.ts';

/** A revision beside itself says nothing. */
const namedTwice = (id: string): Issue => ({
  path: ['command line'],
  code: 'named-twice',
  message: 'A revision is named twice; beside itself it shows no difference.',
  value: id,
  allowed: 'each revision once',
  remedy: 'Name two or more different revisions.',
});

/** The command. */
export const compareCommand: Command = {
  shape: {
    usage: 'npm run -s compare -- FILE REV REV... [--json] [--solved]',
    about: [
      'Predicts revisions of a project and compares them with the first one named.',
      '  --json   machine-readable, each figure with its unit',
      '  --solved  solve the flow fields too (seconds): dead spots, corners, tip and nozzle',
      '            without it: an estimate from formulas, which does not look into them',
    ],
    flags: ['json', 'solved'],
    values: [],
    words: [3, Number.POSITIVE_INFINITY],
  },
  async run(given, output, workerPath) {
    const words = readWords(this.shape, given);
    if (!words.ok) return refuse(words.issues, output);
    const [file = '', ...revisions] = words.value.bare;
    const twice = revisions.find((id, index) => revisions.indexOf(id) !== index);
    if (twice !== undefined) return refuse([namedTwice(twice)], output);
    const project = await readProject(file);
    if (!project.ok) return refuse(project.issues, output, file);
    tellUnknown(project.value, output, file);
    const designs = readDesigns(project.value, revisions);
    if (!designs.ok) return refuse(designs.issues, output, file);
    const fields = words.value.flags.has('solved') ? 'solved' : 'formula';
    const tasks = revisions.map((revisionId) => ({ project: project.value, revisionId, fields }) as const);
    const predictions = await predictAll(tasks, workerPath);
    const comparison = comparePredictions(predictions);
    const json = words.value.flags.has('json');
    output.result(
      json
        ? JSON.stringify(comparisonJson(comparison, predictions, designs.value), null, 2)
        : comparisonTable(comparison, predictions, designs.value),
    );
    if (!json && fields === 'formula') output.result(solvedHint);
    return status.done;
  },
};
