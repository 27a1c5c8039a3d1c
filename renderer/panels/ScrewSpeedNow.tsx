/** The speed at which the screw turns, and where the drive holds it down, what was asked. */

import { fromSi, toSi } from '../../core/index.ts';
import { formatNumber, formatQuantity } from '../look.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { useProjectState } from '../store/project.ts';
import { text } from '../strings.ts';

/** A speed this little below what was asked is the same, as a share: the search for it ends before that. */
const same = 0.002;

/** @param speed screw speed of the result, 1/s */
export function ScrewSpeedNow({ speed }: { readonly speed: number }) {
  const old = useEvaluation((state) => state.stale && state.first === null);
  const rpm = useProjectState((state) => state.history?.present.process.screwSpeedRpm ?? null);
  const held = !old && rpm !== null && speed < (1 - same) * toSi(rpm, 'rpm');
  if (!held) return <span className="beside">{formatQuantity(speed, 'rpm', 3)}</span>;
  return (
    <span className="beside held" title={text.verdict.heldHelp}>
      {text.verdict.held(formatNumber(fromSi(speed, 'rpm'), 3), formatQuantity(toSi(rpm, 'rpm'), 'rpm', 3))}
    </span>
  );
}
