/** The screw: sections, flight clearance, winding and material. */

import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { setValue } from '../store/edits.ts';
import { applyEdit } from '../store/project.ts';
import { screwFields, steelFields, text } from '../strings.ts';
import { pathBelow, useDesk } from './desk.ts';
import { Fields, Group } from './Group.tsx';
import { SectionTable } from './SectionTable.tsx';
import { CommandButton } from './TopBar.tsx';

const words = text.describe;

/** Everything between feed and tip. */
export function Screw() {
  const { revision, root, locked } = useDesk();
  const hand = pathBelow(root, 'screw.hand');
  const steelName = pathBelow(root, 'screw.steel.name');
  return (
    <>
      <Group
        title={`${words.section}s`}
        aside={
          <span className="group-aside">
            <span className="quiet">{`${words.feedEnd} → ${words.tipEnd}`}</span>
            <CommandButton id="templates" />
          </span>
        }
      >
        <SectionTable />
      </Group>
      <Group title={text.parts.screw}>
        <Fields root={root} specs={screwFields} locked={locked} />
        <ChoiceField
          path={hand}
          label={words.hand}
          help={words.handHelp}
          value={revision.screw.hand}
          options={words.hands}
          disabled={locked}
          onChoose={(value) => applyEdit(setValue(hand, value), { label: words.hand })}
        />
      </Group>
      <Group title={words.steel}>
        <TextField
          label={words.steelName}
          value={revision.screw.steel.name}
          disabled={locked}
          required
          onCommit={(value) => applyEdit(setValue(steelName, value), { label: words.steel })}
        />
        <Fields root={root} specs={steelFields} locked={locked} />
      </Group>
    </>
  );
}
