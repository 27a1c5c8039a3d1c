/** Buttons that put the fitted law into the project, each as one named step. */

import { Button } from 'react-aria-components';
import { checkProject, issueText, type Material, type Project, type RheologyFit } from '../../core/index.ts';
import { announce } from '../files.ts';
import { applyListEdit } from '../panels/desk.ts';
import { usersOf } from '../store/materials.ts';
import { useProject } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { fitText as words } from '../strings/fit.ts';
import { takeInto, takeIntoCopy } from './takeOver.ts';

/** The buttons. */
export function TakeOver({ material, fit }: { readonly material: Material; readonly fit: RheologyFit }) {
  const project = useProject();
  const { id, name } = material;
  const { revisions } = usersOf(project, id);
  const take = (change: (before: Project) => Project, said: string) => {
    const checked = checkProject(change(project));
    if (!checked.ok) return announce('bad', checked.issues.slice(0, 2).map(issueText).join(' '));
    applyListEdit(['materials'], words.takeStep(name), change);
    setView({ dialog: 'none' });
    announce('good', said);
  };
  const copyName = words.copyOf(name).slice(0, 120);
  return (
    <div className="fit-take">
      <Button className="tool" onPress={() => take(takeInto(id, fit), words.taken(name, words.laws[fit.state.model]))}>
        {words.takeInto(name)}
      </Button>
      <Button className="tool" onPress={() => take(takeIntoCopy(id, copyName, fit), words.takenCopy(copyName))}>
        {words.takeCopy}
      </Button>
      {revisions.length > 0 && <span className="quiet">{words.shared(revisions.join(', '))}</span>}
    </div>
  );
}
