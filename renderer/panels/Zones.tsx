/** Heated, insulated and cooled stretches of the barrel. */

import type { Revision } from '../../core/index.ts';
import { DrawIt } from '../drawing/DrawIt.tsx';
import { zoneTools } from '../drawing/entryTools.ts';
import { TextField } from '../fields/TextField.tsx';
import { setValue } from '../store/edits.ts';
import type { Path } from '../store/path.ts';
import { applyEdit } from '../store/project.ts';
import { text, zoneFields } from '../strings.ts';
import { applyListEdit, pathBelow, useDesk } from './desk.ts';
import { EntryTools } from './EntryTools.tsx';
import { Fields, Group } from './Group.tsx';

const words = text.describe;
type Zone = Revision['barrel']['zones'][number];

/** The same stretch with another duty. */
function redone({ name, startMm, endMm }: Zone, kind: Zone['kind']): Zone {
  const stretch = { name, startMm, endMm };
  if (kind === 'heated') return { kind, ...stretch, setTempC: 180, maxPowerW: 50 };
  return kind === 'cooled' ? { kind, ...stretch, coolantTempC: 25 } : { kind, ...stretch };
}

const specsOf = (zone: Zone) => Object.values(zoneFields).filter((spec) => spec.key in zone);

function ZoneCard({ zone, index, list }: { readonly zone: Zone; readonly index: number; readonly list: Path }) {
  const { revision, locked } = useDesk();
  const count = revision.barrel.zones.length;
  const path = [...list, index];
  const act = (label: string, change: Parameters<typeof applyListEdit>[2]) => () => applyListEdit(list, label, change);
  return (
    <div className="card">
      <header>
        <TextField
          label={`${words.zone} ${index + 1}`}
          hideLabel
          value={zone.name}
          disabled={locked}
          required
          onCommit={(name) => applyEdit(setValue([...path, 'name'], name), { label: words.zone })}
        />
        <select
          aria-label={`${zone.name}, ${words.kind}`}
          value={zone.kind}
          disabled={locked}
          onChange={(event) => act(words.kind, setValue(path, redone(zone, event.target.value as Zone['kind'])))()}
        >
          {Object.entries(words.zoneKinds).map(([kind, name]) => (
            <option key={kind} value={kind}>
              {name}
            </option>
          ))}
        </select>
        <EntryTools entry={zone.name} tools={zoneTools(revision, { list, index, count, locked })} />
      </header>
      <div className="pairs">
        <Fields root={path} specs={specsOf(zone)} locked={locked} />
      </div>
    </div>
  );
}

/** All zones in order. */
export function Zones() {
  const { revision, root } = useDesk();
  const list = pathBelow(root, 'barrel.zones');
  return (
    <Group title={words.zones} aside={<DrawIt place="whole" />}>
      {revision.barrel.zones.map((zone, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: zones have no identity but their place
        <ZoneCard key={index} {...{ zone, index, list }} />
      ))}
    </Group>
  );
}
