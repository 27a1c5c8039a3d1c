/** Puts an optional part of the material there, or takes it away. */

import { CheckField } from '../../fields/CheckField.tsx';
import type { PartName } from '../../store/materialStarts.ts';
import { setPart } from '../../store/materials.ts';
import { text } from '../../strings.ts';
import { applyListEdit } from '../desk.ts';
import { Place } from './places.tsx';
import type { PlacedMaterial } from './useMaterial.ts';

/** The box of one part. */
export function PartSwitch({ material, root, part }: PlacedMaterial & { readonly part: PartName }) {
  const label = text.describe.granulate.parts[part];
  return (
    <Place path={[...root, part]}>
      <CheckField
        label={label}
        checked={material[part] !== undefined}
        onChange={(present) => applyListEdit([...root, part], label, setPart(material.id, part, present))}
      />
    </Place>
  );
}
