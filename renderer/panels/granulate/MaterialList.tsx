/** The project's materials: which one this revision runs, what each is used by, adding, copying, removing. */

import { Button } from 'react-aria-components';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { openFit } from '../../fit/store.ts';
import { setValue } from '../../store/edits.ts';
import { duplicateMaterial, isRemovable, removeMaterial, usersOf } from '../../store/materials.ts';
import { applyEdit } from '../../store/project.ts';
import { text } from '../../strings.ts';
import { applyListEdit, pathBelow, useDesk } from '../desk.ts';
import { EntryTools } from '../EntryTools.tsx';
import { Group } from '../Group.tsx';
import { InventedBadge } from '../InventedBadge.tsx';
import { LibraryMenu } from './LibraryMenu.tsx';
import { exportMaterial, importMaterial } from './materialFiles.ts';

const words = text.describe;
const own = words.granulate;

function useTools() {
  const { project, revision, root, locked } = useDesk();
  return (id: string, name: string) => [
    {
      label: own.use,
      disabled: locked || revision.materialId === id,
      act: () => applyEdit(setValue(pathBelow(root, 'materialId'), id), { label: own.runStep(name) }),
    },
    {
      label: text.actions.duplicate,
      act: () =>
        applyListEdit(['materials'], own.duplicateStep(name), duplicateMaterial(id, own.copyOf(name).slice(0, 120))),
    },
    { label: own.fitIt, act: () => openFit(id) },
    { label: own.exportIt, act: () => void exportMaterial(id) },
    {
      label: text.actions.remove,
      disabled: !isRemovable(project, id),
      act: () => applyListEdit(['materials'], own.removeStep(name), removeMaterial(id)),
    },
  ];
}

function List() {
  const { project } = useDesk();
  const toolsFor = useTools();
  const use = (id: string) => {
    const { revisions, trials } = usersOf(project, id);
    if (revisions.length > 0) return own.runBy(revisions.join(', '));
    return trials ? own.inTrials : own.unused;
  };
  return (
    <ul className="materials" aria-label={own.materials}>
      {project.materials.map(({ id, name }) => (
        <li key={id}>
          <span className="material-name">{name}</span>
          <span className="quiet">{use(id)}</span>
          <EntryTools entry={name} tools={toolsFor(id, name)} />
        </li>
      ))}
    </ul>
  );
}

/** Names for a choice; equal names are told apart by their ids. */
function choiceNames(materials: readonly { readonly id: string; readonly name: string }[]): Record<string, string> {
  const twice = (name: string) => materials.filter((one) => one.name === name).length > 1;
  return Object.fromEntries(materials.map(({ id, name }) => [id, twice(name) ? `${name} (${id})` : name]));
}

/** Choice and list. */
export function MaterialList({ invented }: { readonly invented: boolean }) {
  const { project, revision, root, locked } = useDesk();
  const path = pathBelow(root, 'materialId');
  return (
    <Group title={words.material} aside={invented && <InventedBadge />}>
      <ChoiceField
        path={path}
        label={text.parts.granulate}
        help={words.materialHelp}
        value={revision.materialId}
        options={choiceNames(project.materials)}
        disabled={locked}
        onChoose={(id) => applyEdit(setValue(path, id), { label: words.material })}
      />
      <List />
      <div className="library-row">
        <LibraryMenu />
        <Button className="tool" onPress={() => void importMaterial()}>
          {own.importIt}
        </Button>
        <span className="quiet">{own.libraryHelp}</span>
      </div>
    </Group>
  );
}
