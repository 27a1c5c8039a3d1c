/** The barrel: bore, feed opening, zones, heat break. */

import { setValue } from '../store/edits.ts';
import { barrelFields, feedOpeningFields, heatBreakFields, text } from '../strings.ts';
import { applyListEdit, pathBelow, useDesk } from './desk.ts';
import { Fields, Group } from './Group.tsx';
import { Zones } from './Zones.tsx';

const words = text.describe;

function HeatBreak() {
  const { revision, root, locked } = useDesk();
  const { heatBreak, lengthMm } = revision.barrel;
  const path = pathBelow(root, 'barrel.heatBreak');
  const fresh = { startMm: Math.round(lengthMm * 0.25), lengthMm: 8, wallMm: 1.5, conductivityWPerMK: 15 };
  const toggle = () => applyListEdit(path, words.heatBreak, setValue(path, heatBreak ? null : fresh));
  return (
    <Group
      title={words.heatBreak}
      aside={
        <label className="check">
          <input type="checkbox" checked={heatBreak !== null} disabled={locked} onChange={toggle} /> {words.heatBreak}
        </label>
      }
    >
      {heatBreak ? (
        <Fields root={root} specs={heatBreakFields} locked={locked} />
      ) : (
        <p className="quiet">{words.noHeatBreak}</p>
      )}
    </Group>
  );
}

/** Everything around the screw. */
export function Barrel() {
  const { root, locked } = useDesk();
  return (
    <>
      <Group title={words.bore}>
        <Fields root={root} specs={barrelFields} locked={locked} />
      </Group>
      <Group title={words.feedOpening}>
        <Fields root={root} specs={feedOpeningFields} locked={locked} />
      </Group>
      <Zones />
      <HeatBreak />
    </>
  );
}
