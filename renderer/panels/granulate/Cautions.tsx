/** Warnings that belong to the material: each a line to edit, one more at the end. */

import { Button } from 'react-aria-components';
import { TextField } from '../../fields/TextField.tsx';
import { addEntry, dropEntry, setValue } from '../../store/edits.ts';
import { applyEdit } from '../../store/project.ts';
import { text } from '../../strings.ts';
import { Group } from '../Group.tsx';
import type { PlacedMaterial } from './useMaterial.ts';

const words = text.describe.granulate;
/** Limits of the file format. */
const most = { entries: 30, characters: 400 } as const;

/** The group. */
export function Cautions({ material, root }: PlacedMaterial) {
  const list = [...root, 'cautions'];
  const edit = (change: Parameters<typeof applyEdit>[0]) => applyEdit(change, { label: words.cautionStep });
  return (
    <Group title={text.describe.cautions}>
      <ul className="cautions">
        {material.cautions.map((caution, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: cautions have no identity but their place
          <li key={index}>
            <TextField
              label={words.caution(index + 1)}
              hideLabel
              lines={2}
              value={caution}
              required
              maxLength={most.characters}
              onCommit={(next) => edit(setValue([...list, index], next))}
            />
            <Button
              className="tiny"
              aria-label={`${text.actions.remove}: ${words.caution(index + 1)}`}
              onPress={() => edit(dropEntry(list, index))}
            >
              ✕
            </Button>
          </li>
        ))}
      </ul>
      {material.cautions.length < most.entries && (
        <TextField
          label={words.addCaution}
          hideLabel
          placeholder={words.addCaution}
          value=""
          required
          maxLength={most.characters}
          onCommit={(caution) => edit(addEntry(list, caution))}
        />
      )}
    </Group>
  );
}
