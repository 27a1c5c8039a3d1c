/** What time and heat do to the melt: each change with the law it follows. */

import { Button } from 'react-aria-components';
import { type LawKind, lawKind, withLawId, withLawKind } from '../../../core/index.ts';
import { CheckField } from '../../fields/CheckField.tsx';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { announce } from '../../files.ts';
import { setValue } from '../../store/edits.ts';
import { addLaw, changeMaterial, removeLaw, setColourLaw, setFreshMass } from '../../store/materials.ts';
import { applyEdit } from '../../store/project.ts';
import { degradationFields, lawFields, orderField, text } from '../../strings.ts';
import { applyListEdit } from '../desk.ts';
import { EntryTools } from '../EntryTools.tsx';
import { Group } from '../Group.tsx';
import { Place } from './places.tsx';
import { SourcedFields } from './SourcedField.tsx';
import { SourcedNumbers } from './SourcedNumber.tsx';
import type { PlacedMaterial } from './useMaterial.ts';

const words = text.describe.granulate;

/** Most laws that a file holds. */
const most = 12;

type PlacedLaw = PlacedMaterial & { readonly index: number };

function LawHead({ material, root, index }: PlacedLaw) {
  const list = [...root, 'degradation'];
  return (
    <header>
      <TextField
        label={words.observed}
        hideLabel
        value={material.degradation[index]?.observed ?? ''}
        required
        maxLength={200}
        onCommit={(observed) => applyEdit(setValue([...list, index, 'observed'], observed), { label: words.observed })}
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
  );
}

/** Renames a law; a name that another one has is refused with a word. */
function rename({ material, index }: PlacedLaw, typed: string): void {
  const id = typed.trim();
  if (id === material.degradation[index]?.id) return;
  const change = changeMaterial(material.id, (one) => withLawId(one, index, id));
  if (withLawId(material, index, id) === material) announce('bad', words.lawNameTaken(id));
  else applyEdit(change, { label: words.renameLaw(id) });
}

function Identity(placed: PlacedLaw) {
  const { material, root, index } = placed;
  const law = material.degradation[index];
  if (!law) return null;
  const path = [...root, 'degradation', index];
  const choose = (kind: LawKind) =>
    applyListEdit(
      path,
      `${words.kind}: ${words.kinds[kind]}`,
      changeMaterial(material.id, (one) => withLawKind(one, index, kind)),
    );
  const drive = () => applyEdit(setColourLaw(material.id, law.id), { label: `${words.colourLaw}: ${law.observed}` });
  return (
    <>
      <TextField label={words.lawName} value={law.id} required maxLength={60} onCommit={(id) => rename(placed, id)} />
      <ChoiceField
        path={[...path, 'kind']}
        label={words.kind}
        help={words.kindHelp}
        value={lawKind(law)}
        options={words.kinds}
        disabled={false}
        onChoose={choose}
      />
      {law.id === material.colourLaw ? (
        <p className="drives">{words.drivesColour}</p>
      ) : (
        <Button className="link drives" onPress={drive}>
          {words.letDrive}
        </Button>
      )}
    </>
  );
}

function FreshMass({ material, root, index }: PlacedLaw) {
  const law = material.degradation[index];
  if (law?.kind !== 'scission') return null;
  const path = [...root, 'degradation', index, 'initialMolarMassKgPerMol'];
  return (
    <Place path={path}>
      <CheckField
        label={words.freshMassKnown}
        checked={law.initialMolarMassKgPerMol !== undefined}
        onChange={(present) => applyListEdit(path, words.freshMassKnown, setFreshMass(material.id, index, present))}
      />
    </Place>
  );
}

function LawCard(placed: PlacedLaw) {
  const law = placed.material.degradation[placed.index];
  if (!law) return null;
  const path = [...placed.root, 'degradation', placed.index];
  const kind = lawKind(law);
  return (
    <div className="card">
      <LawHead {...placed} />
      <Identity {...placed} />
      <SourcedFields root={path} specs={degradationFields[kind]} />
      <FreshMass {...placed} />
      <SourcedNumbers root={path} specs={kind === 'order' ? [orderField, ...lawFields] : lawFields} />
    </div>
  );
}

/** The group. */
export function Laws({ material, root }: PlacedMaterial) {
  const list = [...root, 'degradation'];
  const add = () => applyListEdit(list, words.addLaw, addLaw(material.id));
  return (
    <Group
      title={words.laws}
      aside={
        <Place path={list}>
          <Button className="link" isDisabled={material.degradation.length >= most} onPress={add}>
            {words.addLaw}
          </Button>
        </Place>
      }
    >
      {material.degradation.map((law, index) => (
        <LawCard key={law.id} {...{ material, root, index }} />
      ))}
    </Group>
  );
}
