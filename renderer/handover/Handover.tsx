/** The dialog that hands files over; its content is fetched when it is opened. */

import { lazy, Suspense } from 'react';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { useView } from '../store/view.ts';
import { handoverText as words } from '../strings/handover.ts';

const Parts = lazy(() => import('./Parts.tsx'));

/** Nothing of it is worked out while it is closed; closing it ends what runs. */
export function Handover() {
  const open = useView((state) => state.dialog === 'handover');
  return (
    <DialogFrame id="handover" title={words.title} wide>
      {open && (
        <Suspense fallback={<p className="quiet">{words.loading}</p>}>
          <Parts />
        </Suspense>
      )}
    </DialogFrame>
  );
}
