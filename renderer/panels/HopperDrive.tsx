/** What feeds the screw and what turns it. */

import { ChoiceField } from '../fields/ChoiceField.tsx';
import { removeValue, setValue } from '../store/edits.ts';
import { applyEdit } from '../store/project.ts';
import { bearingFields, driveFields, hopperFields, motorFields, text } from '../strings.ts';
import { pathBelow, useDesk } from './desk.ts';
import { Fields, Group } from './Group.tsx';
import { ListTable } from './ListTable.tsx';

const words = text.describe;

/** The hopper above the feed opening. */
export function Hopper() {
  const { revision, root, locked } = useDesk();
  const path = pathBelow(root, 'hopper.agitation');
  return (
    <Group title={words.hopper}>
      <Fields root={root} specs={hopperFields} locked={locked} />
      <ChoiceField
        path={path}
        label={words.agitation}
        help={words.agitationHelp}
        value={revision.hopper.agitation}
        options={words.agitations}
        disabled={locked}
        onChoose={(value) => applyEdit(setValue(path, value), { label: words.agitation })}
      />
    </Group>
  );
}

/** A bearing as it begins: a small thrust bearing's order of magnitude, to be replaced from its data sheet. */
const startBearing = { staticLoadN: 5000 };

/** The axial bearing, which may be left out. */
function Bearing() {
  const { revision, root, locked } = useDesk();
  const { bearing } = revision.drive;
  const path = pathBelow(root, 'drive.bearing');
  const choose = (kind: 'none' | 'ball' | 'roller') =>
    applyEdit(kind === 'none' ? removeValue(path) : setValue(path, { ...startBearing, ...bearing, kind }), {
      label: words.bearing,
    });
  return (
    <Group title={words.bearing}>
      <ChoiceField
        path={path}
        label={words.bearingKind}
        help={words.bearingHelp}
        value={bearing?.kind ?? 'none'}
        options={words.bearings}
        disabled={locked}
        onChoose={choose}
      />
      {bearing && <Fields root={root} specs={bearingFields} locked={locked} />}
    </Group>
  );
}

/** Motor, gear, stepping and bearing. */
export function Drive() {
  const { revision, root, locked } = useDesk();
  return (
    <>
      <Group title={words.drive}>
        <Fields root={root} specs={driveFields} locked={locked} />
      </Group>
      <Group title={words.motorCurve}>
        <ListTable
          list={pathBelow(root, 'drive.motorCurve')}
          count={revision.drive.motorCurve.length}
          least={2}
          specs={motorFields}
          entryWord={words.point}
          locked={locked}
        />
      </Group>
      <Bearing />
    </>
  );
}
