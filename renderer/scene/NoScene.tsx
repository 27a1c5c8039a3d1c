/** What stands in for the 3D view where it cannot be drawn. */

import { SideDrawing } from '../plots/SideDrawing.tsx';
import { text } from '../strings.ts';

/** A message and the side drawing. */
export function NoScene() {
  return (
    <div className="no-scene" role="status">
      <p>{text.see.noWebgl}</p>
      <SideDrawing />
    </div>
  );
}
