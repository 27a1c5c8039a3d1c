/** What stands in for the 3D view where it cannot be drawn. */

import { Button } from 'react-aria-components';
import { SideDrawing } from '../plots/SideDrawing.tsx';
import { text } from '../strings.ts';

/** A message and the side drawing. */
export function NoScene({ retry }: { retry?(): void }) {
  return (
    <div className="no-scene" role="status">
      <p>{retry ? text.see.lost : text.see.noWebgl}</p>
      {retry && (
        <p>
          <Button className="tool" onPress={retry}>
            {text.see.drawAgain}
          </Button>
        </p>
      )}
      <SideDrawing />
    </div>
  );
}
