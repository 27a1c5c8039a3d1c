/** Shows, while a file hangs over the window, that it may be dropped. */

import { safeText } from '../strings/safekeeping.ts';
import { useDropOver } from './drop.ts';

/** The hint over the whole window; the pointer goes through it. */
export function DropHint() {
  if (!useDropOver()) return null;
  return (
    <div className="drop-hint" role="status">
      <div>
        <b>{safeText.drop.title}</b>
        <p>{safeText.drop.help}</p>
      </div>
    </div>
  );
}
