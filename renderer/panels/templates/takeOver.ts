/** Taking a template's screw over, as one step. */

import { type Project, type TemplateScrew, validateDesign } from '../../../core/index.ts';
import { announce } from '../../files.ts';
import { dropDrafts } from '../../store/drafts.ts';
import { setValue } from '../../store/edits.ts';
import { revisionPath } from '../../store/path.ts';
import { activeRevision, applyEdit, currentProject } from '../../store/project.ts';
import { branchRevision, freeId } from '../../store/revisions.ts';
import { setView } from '../../store/view.ts';
import { templateText } from '../../strings/templates.ts';
import { today } from '../../today.ts';

/** Whether the open revision is accepted as it is. */
export const openFits = (project: Project): boolean => validateDesign(project, activeRevision(project).id).ok;

/** The project with this screw's sections and tip in a revision. */
function withScrew(project: Project, id: string, { sections, tip }: TemplateScrew): Project {
  const path = [...revisionPath(project, id), 'screw'];
  const { screw } = project.revisions.find((revision) => revision.id === id) ?? activeRevision(project);
  return setValue(path, { ...screw, sections, tip })(project);
}

function done(title: string): void {
  dropDrafts(['revisions']);
  setView({ dialog: 'none', part: 'screw' });
  announce('good', templateText.taken(title));
}

/** Puts the screw into the open revision. */
export function putIn(screw: TemplateScrew, title: string): void {
  const project = currentProject();
  if (!project) return;
  const { id } = activeRevision(project);
  applyEdit((now) => withScrew(now, id, screw), { label: templateText.step(title) });
  done(title);
}

/** Puts the screw into a copy of the open revision. */
export function branchWith(screw: TemplateScrew, title: string): void {
  const project = currentProject();
  if (!project) return;
  const [from, id] = [activeRevision(project).id, freeId(project)];
  const branch = branchRevision(from, templateText.revisionName(title), today());
  applyEdit((now) => withScrew(branch(now), id, screw), { label: templateText.branchStep(title, id) });
  done(title);
}
