/** The colours that the material goes through, and which change drives them. */

import { Button } from 'react-aria-components';
import type { Sourced } from '../../../core/index.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { dropEntry } from '../../store/edits.ts';
import { addAnchor, setAnchorOrigin, setColourLaw } from '../../store/materials.ts';
import { applyEdit } from '../../store/project.ts';
import { anchorFields, text } from '../../strings.ts';
import { applyListEdit } from '../desk.ts';
import { Group } from '../Group.tsx';
import { ListTable } from '../ListTable.tsx';
import { Place } from './places.tsx';
import type { PlacedMaterial } from './useMaterial.ts';

const words = text.describe.granulate;

/** Most anchors that a file holds. */
const most = 40;

function Anchors({ material, root }: PlacedMaterial) {
  const list = [...root, 'colourAnchors'];
  const remove = (index: number) => [
    {
      label: text.actions.remove,
      act: () => applyListEdit(list, `${text.actions.remove}: ${words.anchor}`, dropEntry(list, index)),
    },
  ];
  return (
    <ListTable
      list={list}
      count={material.colourAnchors.length}
      least={0}
      specs={anchorFields}
      entryWord={words.anchor}
      locked={false}
      tools={remove}
    />
  );
}

/** What all anchors say alike; empty where they differ or say nothing. */
function common<T>(values: readonly (T | undefined)[]): T | undefined {
  const [first] = values;
  return values.every((one) => one === first) ? first : undefined;
}

/** Where the anchors come from, said once for all of them. */
function Origin({ material, root }: PlacedMaterial) {
  const anchors = material.colourAnchors;
  const edit = (label: string, origin: Parameters<typeof setAnchorOrigin>[1]) =>
    applyEdit(setAnchorOrigin(material.id, origin), { label });
  const status = common(anchors.map((one) => one.status));
  return (
    <>
      <Place path={[...root, 'colourAnchors']}>
        <ChoiceField<Sourced['status'] | ''>
          path={[...root, 'colourAnchors']}
          label={words.anchorStatus}
          help={words.statusHelp}
          value={status ?? ''}
          options={
            { ...(status ? {} : { '': words.mixed }), ...words.statuses } as Record<Sourced['status'] | '', string>
          }
          disabled={false}
          onChoose={(next) => next !== '' && edit(words.anchorStatus, { status: next })}
        />
      </Place>
      <TextField
        label={words.anchorSource}
        value={common(anchors.map(({ source }) => source)) ?? ''}
        placeholder={words.mixed}
        lines={2}
        required
        maxLength={600}
        onCommit={(source) => edit(words.anchorSource, { source })}
      />
    </>
  );
}

/** The group. */
export function Colours({ material, root }: PlacedMaterial) {
  const names = Object.fromEntries(material.degradation.map(({ id, observed }) => [id, observed]));
  const list = [...root, 'colourAnchors'];
  const add = () => applyListEdit(list, words.addAnchor, addAnchor(material.id));
  const addButton = (
    <Button className="link" isDisabled={material.colourAnchors.length >= most} onPress={add}>
      {words.addAnchor}
    </Button>
  );
  const empty = material.colourAnchors.length === 0;
  return (
    <Group title={words.colour} aside={empty ? <Place path={list}>{addButton}</Place> : addButton}>
      <Place path={[...root, 'colourLaw']}>
        <ChoiceField
          path={[...root, 'colourLaw']}
          label={words.colourLaw}
          help={words.colourLawHelp}
          value={material.colourLaw ?? ''}
          options={{ '': words.noColourLaw, ...names }}
          disabled={false}
          onChoose={(id) => applyEdit(setColourLaw(material.id, id === '' ? null : id), { label: words.colourLaw })}
        />
      </Place>
      {!empty && <Anchors {...{ material, root }} />}
      {!empty && <Origin {...{ material, root }} />}
    </Group>
  );
}
