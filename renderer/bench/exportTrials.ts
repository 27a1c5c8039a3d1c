/** Trials handed out as a table. */

import { issueText, type Project, writeBenchCsv } from '../../core/index.ts';
import { getBridge } from '../bridge.ts';
import { announce } from '../files.ts';
import { text } from '../strings.ts';

/** File name from a project's name. */
const nameFor = (name: string): string =>
  `${
    name
      .replace(/[^\p{L}\p{N}._-]+/gu, '-')
      .replace(/^[-.]+|[-.]+$/g, '')
      .slice(0, 60) || 'project'
  }-trials.csv`;

/** Saves all trials as CSV where the person wants it. Begins with the byte order mark that spreadsheets know UTF-8 by. */
export async function exportTrials(project: Project, comma: boolean): Promise<void> {
  const style = comma ? ({ delimiter: ';', decimal: ',' } as const) : ({ delimiter: ',', decimal: '.' } as const);
  const saved = await getBridge().exportFile(nameFor(project.name), `\uFEFF${writeBenchCsv(project.benchLog, style)}`);
  if (!saved.ok) announce('bad', saved.issues.map(issueText).join(' '));
  else if (saved.value) announce('good', text.notices.saved(saved.value.name));
}
