/** `predict FILE [--revision ID] [--json] [--solved]`: the verdict on one revision. */

import { predictionJson, predictionTable } from '../../core/index.ts';
import { type Command, refuse, status, tellUnknown } from './command.ts';
import { readWords } from './options.ts';
import { predictAll, solvedHint } from './predictAll.ts';
import { readDesigns, readProject } from './readDesign.ts';

/** The command; without --revision it takes the project's active one. */
export const predictCommand: Command = {
  shape: {
    usage: 'npm run -s predict -- FILE [--revision ID] [--json] [--solved]',
    about: [
      'Predicts one revision of a project.',
      '  --revision ID  the revision; without it the active one',
      '  --json         everything, machine-readable, with assumptions, ranges and sources',
      '  --solved       solve the flow fields too (seconds): dead spots, corners, tip and nozzle',
    ],
    flags: ['json', 'solved'],
    values: ['revision'],
    words: [1, 1],
  },
  async run(given, output, workerPath) {
    const words = readWords(this.shape, given);
    if (!words.ok) return refuse(words.issues, output);
    const [file = ''] = words.value.bare;
    const project = await readProject(file);
    if (!project.ok) return refuse(project.issues, output, file);
    tellUnknown(project.value, output, file);
    const revisionId = words.value.values.get('revision') ?? project.value.activeRevision;
    const designs = readDesigns(project.value, [revisionId]);
    if (!designs.ok) return refuse(designs.issues, output, file);
    const fields = words.value.flags.has('solved') ? 'solved' : 'formula';
    const [prediction] = await predictAll([{ project: project.value, revisionId, fields }], workerPath);
    const [design] = designs.value;
    if (!prediction) throw new Error('no prediction came back');
    const json = words.value.flags.has('json');
    output.result(
      json ? JSON.stringify(predictionJson(prediction, design), null, 2) : predictionTable(prediction, design),
    );
    if (!json && fields === 'formula') output.result(solvedHint);
    return status.done;
  },
};
