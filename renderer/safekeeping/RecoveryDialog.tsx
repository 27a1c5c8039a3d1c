/** Work that windows left behind unsaved, to be decided on now or later. */

import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { setView, useView } from '../store/view.ts';
import { safeText } from '../strings/safekeeping.ts';
import { KeptWork } from './KeptWork.tsx';
import { decideLater, readWork, useRecovery } from './recovery.ts';

const words = safeText.recovery;

/** The dialog; of a single piece the difference is shown at once. */
export function RecoveryDialog() {
  const waiting = useRecovery((state) => state.waiting);
  const only = waiting.length === 1 ? waiting[0]?.id : undefined;
  const open = useView((state) => state.dialog === 'recovery');
  useEffect(() => {
    if (open && only !== undefined) void readWork(only);
  }, [open, only]);
  useEffect(() => (open ? decideLater : undefined), [open]);
  return (
    <DialogFrame id="recovery" title={words.title} wide>
      <p>{waiting.length === 0 ? words.none : words.help}</p>
      <div className="kept-works">
        {waiting.map((found) => (
          <KeptWork key={found.id} found={found} />
        ))}
      </div>
      <Button className="tool" onPress={() => setView({ dialog: 'none' })}>
        {safeText.decideLater}
      </Button>
    </DialogFrame>
  );
}
