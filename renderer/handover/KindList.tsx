/** All kinds of files by group; one is chosen. */

import { Radio, RadioGroup } from 'react-aria-components';
import { handoverText as words } from '../strings/handover.ts';
import type { HandoverKind } from './solve/protocol.ts';
import { setHandover } from './store.ts';

const groupIds = Object.keys(words.groups) as (keyof typeof words.groups)[];

/** The list. */
export function KindList({ kinds, chosen }: { readonly kinds: readonly HandoverKind[]; readonly chosen: string }) {
  return (
    <RadioGroup
      className="handover-kinds"
      value={chosen}
      onChange={(kindId) => setHandover({ kindId })}
      aria-label={words.kinds}
    >
      {groupIds.map((group) => {
        const own = kinds.filter((kind) => kind.group === group);
        if (own.length === 0) return null;
        return (
          <div key={group} className="handover-group">
            <span className="handover-group-name">{words.groups[group]}</span>
            {own.map(({ id, label, extension }) => (
              <Radio key={id} value={id} className="handover-kind">
                <span>{label}</span> <span className="quiet">.{extension}</span>
              </Radio>
            ))}
          </div>
        );
      })}
    </RadioGroup>
  );
}
