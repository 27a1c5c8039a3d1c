/** The day, as the person's clock shows it. */

import { dayText } from '../core/index.ts';

/** Today as YYYY-MM-DD, by this computer's clock and zone. */
export const today = (): string => dayText(new Date());
