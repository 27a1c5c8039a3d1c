/** Asks before changes would be lost. */

import { Button } from 'react-aria-components';
import { goOn } from '../files.ts';
import { useProject } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { text } from '../strings.ts';
import { DialogFrame } from './DialogFrame.tsx';

const words = text.discard;

/** The dialog. */
export function Discard() {
  const { name } = useProject();
  return (
    <DialogFrame id="discard" title={words.title}>
      <p>{words.help(name)}</p>
      <div className="acts">
        <Button className="tool" onPress={() => void goOn(true)}>
          {words.save}
        </Button>
        <Button className="tool" onPress={() => void goOn(false)}>
          {words.drop}
        </Button>
        <Button className="tool" onPress={() => setView({ dialog: 'none' })}>
          {words.keep}
        </Button>
      </div>
    </DialogFrame>
  );
}
