/** `predict FILE [--revision ID] [--json]`: the verdict on one revision. */

import { predict, predictionJson, predictionTable } from '../../core/index.ts';
import { type Command, refuse, status } from './command.ts';
import { readWords } from './options.ts';
import { readDesigns, readProject } from './readDesign.ts';

/** The command; without --revision it takes the project's active one. */
export const predictCommand: Command = {
  shape: {
    usage: 'npm run -s predict -- FILE [--revision ID] [--json]',
    flags: ['json'],
    values: ['revision'],
    words: [1, 1],
  },
  async run(given, output) {
    const words = readWords(this.shape, given);
    if (!words.ok) return refuse(words.issues, output);
    const project = await readProject(words.value.bare[0] ?? '');
    if (!project.ok) return refuse(project.issues, output);
    const revision = words.value.values.get('revision') ?? project.value.activeRevision;
    const designs = readDesigns(project.value, [revision]);
    if (!designs.ok) return refuse(designs.issues, output);
    for (const design of designs.value) {
      const prediction = predict(design);
      const json = words.value.flags.has('json');
      output.result(json ? JSON.stringify(predictionJson(prediction), null, 2) : predictionTable(prediction));
    }
    return status.done;
  },
};
