/** Name, note and kind of the material. */

import { CheckField } from '../../fields/CheckField.tsx';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { setValue } from '../../store/edits.ts';
import { applyEdit, useProject } from '../../store/project.ts';
import { text } from '../../strings.ts';
import { Group } from '../Group.tsx';
import type { PlacedMaterial } from './useMaterial.ts';

const words = text.describe.granulate;

/** The group. */
export function About({ material, root }: PlacedMaterial) {
  const { revisions } = useProject();
  const locked = revisions.filter((one) => one.locked && one.materialId === material.id).map(({ id }) => id);
  const set = (key: 'name' | 'note' | 'invented' | 'form', label: string) => (value: string | boolean) =>
    applyEdit(setValue([...root, key], value), { label });
  return (
    <Group title={words.about}>
      <TextField label={words.name} value={material.name} required maxLength={120} onCommit={set('name', words.name)} />
      <TextField
        label={words.note}
        value={material.note ?? ''}
        lines={3}
        maxLength={4000}
        onCommit={set('note', words.note)}
      />
      <ChoiceField
        path={[...root, 'form']}
        label={words.form}
        help={words.formHelp}
        value={material.form}
        options={words.forms}
        disabled={false}
        onChoose={set('form', words.form)}
      />
      <CheckField label={words.invented} checked={material.invented} onChange={set('invented', words.invented)} />
      <p className="quiet">{text.describe.sharedMaterial}</p>
      {locked.length > 0 && <p className="template-warn">{text.describe.sharedLocked(locked)}</p>}
    </Group>
  );
}
