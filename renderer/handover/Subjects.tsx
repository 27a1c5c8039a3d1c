/** Which revision is handed over; several where the kind compares them. */

import { CheckField } from '../fields/CheckField.tsx';
import { useProject } from '../store/project.ts';
import { handoverText as words } from '../strings/handover.ts';
import type { HandoverKind } from './solve/protocol.ts';
import { setHandover } from './store.ts';

/** The choice. */
export function Subjects({ kind, chosen }: { readonly kind: HandoverKind; readonly chosen: readonly string[] }) {
  const { revisions } = useProject();
  if (!kind.several) {
    return (
      <label className="handover-subject">
        <span>{words.subject}</span>
        <select value={chosen[0]} onChange={({ target }) => setHandover({ revisionIds: [target.value] })}>
          {revisions.map(({ id, name }) => (
            <option key={id} value={id}>
              {id}: {name}
            </option>
          ))}
        </select>
      </label>
    );
  }
  const toggle = (id: string, on: boolean) => {
    const rest = chosen.filter((each) => each !== id);
    const next = on ? [...rest, id] : rest;
    if (next.length > 0) setHandover({ revisionIds: next });
  };
  return (
    <fieldset className="handover-subjects">
      <legend>{words.subjects}</legend>
      {revisions.map(({ id, name }) => (
        <CheckField key={id} label={`${id}: ${name}`} checked={chosen.includes(id)} onChange={(on) => toggle(id, on)} />
      ))}
      <p className="quiet">{words.subjectsHelp}</p>
    </fieldset>
  );
}
