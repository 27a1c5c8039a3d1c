/** Example projects for the tests of the drawing, each of their revisions opened in turn. */

import demoText from '../../../assets/examples/demo.json?raw';
import hdpeText from '../../../assets/examples/hdpe-regrind.json?raw';
import misfitText from '../../../assets/examples/pla-pellet-misfit.json?raw';
import waxText from '../../../assets/examples/wax-head.json?raw';
import { type Project, parseProject } from '../../../core/index.ts';

function read(text: string): Project {
  const parsed = parseProject(text);
  if (!parsed.ok) throw new Error('examples are good projects');
  return parsed.value;
}

/** The demo with its last, unlocked revision open. */
export const demo = (): Project => read(demoText);

/** Every revision of every example as the open one. */
export const openedExamples = (): readonly (readonly [string, Project])[] =>
  Object.entries({ demo: demoText, hdpe: hdpeText, misfit: misfitText, wax: waxText }).flatMap(([name, text]) => {
    const project = read(text);
    return project.revisions.map(({ id }) => [`${name} ${id}`, { ...project, activeRevision: id }] as const);
  });

/** A project with one change in its open revision. */
export function changed(project: Project, change: (revision: Project['revisions'][number]) => void): Project {
  const copy = structuredClone(project);
  const revision = copy.revisions.find(({ id }) => id === copy.activeRevision);
  if (revision) change(revision);
  return copy;
}
