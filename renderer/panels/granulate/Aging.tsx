/** What time and heat do to the melt, and the colours it goes through. */

import { Button } from 'react-aria-components';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { dropEntry, setValue } from '../../store/edits.ts';
import { addAnchor, addLaw, removeLaw, setColourLaw } from '../../store/materials.ts';
import { applyEdit } from '../../store/project.ts';
import { anchorFields, degradationFields, lawFields, text } from '../../strings.ts';
import { applyListEdit } from '../desk.ts';
import { EntryTools } from '../EntryTools.tsx';
import { Fields, Group } from '../Group.tsx';
import { ListTable } from '../ListTable.tsx';
import { SourcedFields } from './SourcedField.tsx';
import type { PlacedMaterial } from './useMaterial.ts';

const words = text.describe.granulate;

/** Most entries that a file holds. */
const most = { laws: 12, anchors: 40 } as const;

function LawCard({ material, root, index }: PlacedMaterial & { readonly index: number }) {
  const law = material.degradation[index];
  if (!law) return null;
  const list = [...root, 'degradation'];
  const path = [...list, index];
  return (
    <div className="card">
      <header>
        <TextField
          label={words.observed}
          hideLabel
          value={law.observed}
          required
          maxLength={200}
          onCommit={(observed) => applyEdit(setValue([...path, 'observed'], observed), { label: words.observed })}
        />
        <EntryTools
          entry={`${words.law} ${index + 1}`}
          tools={[
            {
              label: text.actions.remove,
              act: () => applyListEdit(list, words.removeLaw, removeLaw(material.id, index)),
            },
          ]}
        />
      </header>
      <SourcedFields root={path} specs={degradationFields} />
      <Fields root={path} specs={lawFields} locked={false} />
    </div>
  );
}

function Laws({ material, root }: PlacedMaterial) {
  const add = () => applyListEdit([...root, 'degradation'], words.addLaw, addLaw(material.id));
  return (
    <Group
      title={words.laws}
      aside={
        <Button className="link" isDisabled={material.degradation.length >= most.laws} onPress={add}>
          {words.addLaw}
        </Button>
      }
    >
      {material.degradation.map((law, index) => (
        <LawCard key={law.id} {...{ material, root, index }} />
      ))}
    </Group>
  );
}

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

function Colour({ material, root }: PlacedMaterial) {
  const names = Object.fromEntries(material.degradation.map(({ id, observed }) => [id, observed]));
  const add = () => applyListEdit([...root, 'colourAnchors'], words.addAnchor, addAnchor(material.id));
  return (
    <Group
      title={words.colour}
      aside={
        <Button className="link" isDisabled={material.colourAnchors.length >= most.anchors} onPress={add}>
          {words.addAnchor}
        </Button>
      }
    >
      <ChoiceField
        path={[...root, 'colourLaw']}
        label={words.colourLaw}
        help={words.colourLawHelp}
        value={material.colourLaw ?? ''}
        options={{ '': words.noColourLaw, ...names }}
        disabled={false}
        onChoose={(id) => applyEdit(setColourLaw(material.id, id === '' ? null : id), { label: words.colourLaw })}
      />
      {material.colourAnchors.length > 0 && <Anchors {...{ material, root }} />}
    </Group>
  );
}

/** Both groups. */
export function Aging(placed: PlacedMaterial) {
  return (
    <>
      <Laws {...placed} />
      <Colour {...placed} />
    </>
  );
}
