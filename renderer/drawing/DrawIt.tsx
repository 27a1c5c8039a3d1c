/** A button of the description that opens the drawing at a part of the machine. */

import { Button } from 'react-aria-components';
import { flyTo, type Place, setView } from '../store/view.ts';
import { drawingText } from '../strings/drawing.ts';

/** The button. */
export function DrawIt({ place }: { readonly place: Place }) {
  const open = () => {
    setView({ seeing: 'drawing' });
    flyTo(place);
  };
  return (
    <Button className="link" onPress={open}>
      <span title={drawingText.openHelp}>{drawingText.open}</span>
    </Button>
  );
}
