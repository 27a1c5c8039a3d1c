/** Which part of the description a path of the project belongs to. */

import type { Path } from '../store/path.ts';
import type { PartId } from '../store/view.ts';

/** The part whose panel edits the value at `path`; null where no panel does. */
export function partOf(path: Path): PartId | null {
  const [root, , room, detail] = path;
  if (root === 'materials') return 'granulate';
  if (root === 'process') return 'running';
  if (root === 'print') return 'print';
  if (root !== 'revisions') return null;
  switch (room) {
    case 'screw':
      return detail === 'tip' || detail === 'shank' ? 'tip' : 'screw';
    case 'barrel':
    case 'nozzle':
    case 'hopper':
    case 'drive':
      return room;
    case 'materialId':
      return 'granulate';
    default:
      return null;
  }
}
