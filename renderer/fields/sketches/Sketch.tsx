/** A small drawing of where a dimension is measured. */

import type { Path } from '../../store/path.ts';
import { bases } from './bases.tsx';
import { Dimension } from './Dimension.tsx';
import { sketchTable } from './sketchTable.ts';

/** Keys that say whose value it is, not which. */
const passedOver = new Set<string | number>(['revisions', 'materials', 'value', 'low', 'high']);

/** Name of the drawing for the field at `path`; null where it is no dimension. */
export function sketchOf(path: Path): string | null {
  const name = path.filter((key) => typeof key === 'string' && !passedOver.has(key)).join('.');
  return Object.hasOwn(sketchTable, name) ? name : null;
}

/** The drawing of this name; nothing where there is none. */
export function Sketch({ name, label }: { readonly name: string; readonly label: string }) {
  const plan = sketchTable[name];
  if (!plan) return null;
  const Base = bases[plan.base];
  return (
    <svg className="sketch" viewBox="0 0 132 72" role="img" aria-label={label}>
      <Base />
      {plan.shapes.map((shape) => (
        <Dimension key={JSON.stringify(shape)} shape={shape} />
      ))}
    </svg>
  );
}
