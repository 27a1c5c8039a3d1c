/** The screw's two ends: tip with pin, and shank. */

import type { Revision } from '../../core/index.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { setValue } from '../store/edits.ts';
import { applyEdit } from '../store/project.ts';
import { shankFields, text, tipFields } from '../strings.ts';
import { pathBelow, useDesk } from './desk.ts';
import { Fields, Group } from './Group.tsx';

const words = text.describe;
type Tip = Revision['screw']['tip'];

/** The same pin on another kind of tip. */
function reshaped(tip: Tip, kind: Tip['kind']): Tip {
  const { pinDiameterMm, pinLengthMm } = tip;
  return kind === 'cone'
    ? { kind, includedAngleDeg: 60, pinDiameterMm, pinLengthMm }
    : { kind, pinDiameterMm, pinLengthMm };
}

/** Tip and shank. */
export function TipShank() {
  const { revision, root, locked } = useDesk();
  const { tip } = revision.screw;
  const path = pathBelow(root, 'screw.tip');
  const specs = tipFields.filter((spec) => tip.kind === 'cone' || !spec.key.endsWith('includedAngleDeg'));
  return (
    <>
      <Group title={words.tip}>
        <ChoiceField
          path={path}
          label={words.tipShape}
          help={words.tipHelp}
          value={tip.kind}
          options={words.tipShapes}
          disabled={locked}
          onChoose={(kind) => applyEdit(setValue(path, reshaped(tip, kind)), { label: words.tipShape })}
        />
        <Fields root={root} specs={specs} locked={locked} />
      </Group>
      <Group title={words.shank}>
        <Fields root={root} specs={shankFields} locked={locked} />
      </Group>
    </>
  );
}
