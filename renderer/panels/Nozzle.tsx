/** The bore after the barrel: pieces, outside and heater. */

import { DrawIt } from '../drawing/DrawIt.tsx';
import { pieceTools } from '../drawing/entryTools.ts';
import { TextField } from '../fields/TextField.tsx';
import { setValue } from '../store/edits.ts';
import { applyEdit } from '../store/project.ts';
import { nozzleFields, pieceFields, text } from '../strings.ts';
import { pathBelow, useDesk } from './desk.ts';
import { Fields, Group } from './Group.tsx';
import { ListTable } from './ListTable.tsx';

const words = text.describe;

/** Everything from barrel to orifice. */
export function Nozzle() {
  const { revision, root, locked } = useDesk();
  const list = pathBelow(root, 'nozzle.segments');
  const name = (index: number) => (
    <TextField
      label={`${words.piece} ${index + 1}`}
      hideLabel
      value={revision.nozzle.segments[index]?.name ?? ''}
      disabled={locked}
      required
      onCommit={(value) => applyEdit(setValue([...list, index, 'name'], value), { label: words.piece })}
    />
  );
  return (
    <>
      <Group title={words.pieces} aside={<DrawIt place="outlet" />}>
        <ListTable
          list={list}
          count={revision.nozzle.segments.length}
          least={1}
          specs={pieceFields}
          entryWord={words.piece}
          locked={locked}
          head={name}
          tools={(index) => pieceTools({ list, index, count: revision.nozzle.segments.length, locked })}
        />
      </Group>
      <Group title={words.nozzle}>
        <Fields root={root} specs={nozzleFields} locked={locked} />
      </Group>
    </>
  );
}
