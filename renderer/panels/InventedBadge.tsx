/** Says that data are made up, wherever they are shown. */

import { text } from '../strings.ts';

/** The badge. */
export const InventedBadge = () => (
  <span className="badge invented" title={text.inventedHelp}>
    <span aria-hidden="true">✎</span> {text.invented}
  </span>
);
