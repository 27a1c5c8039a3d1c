/** `compare FILE REV REV... [--json]`: revisions side by side, and which is better in what. */

import { comparePredictions, compareTable, predict } from '../../core/index.ts';
import { type Command, refuse, status } from './command.ts';
import { readWords } from './options.ts';
import { readDesigns, readProject } from './readDesign.ts';

/** The command. */
export const compareCommand: Command = {
  shape: {
    usage: 'npm run -s compare -- FILE REV REV... [--json]',
    flags: ['json'],
    values: [],
    words: [3, Number.POSITIVE_INFINITY],
  },
  async run(given, output) {
    const words = readWords(this.shape, given);
    if (!words.ok) return refuse(words.issues, output);
    const [path = '', ...revisions] = words.value.bare;
    const project = await readProject(path);
    if (!project.ok) return refuse(project.issues, output);
    const designs = readDesigns(project.value, revisions);
    if (!designs.ok) return refuse(designs.issues, output);
    const comparison = comparePredictions(designs.value.map((design) => predict(design)));
    output.result(words.value.flags.has('json') ? JSON.stringify(comparison, null, 2) : compareTable(comparison));
    return status.done;
  },
};
