/** Says that the open revision's prediction is calibrated, by which trials, and takes the calibration off again. */

import { Button } from 'react-aria-components';
import { useDesk } from '../panels/desk.ts';
import { benchText } from '../strings/bench.ts';
import { errorText, idsText } from './figures.ts';
import { factorsText } from './KeptCalibrations.tsx';
import { takeCalibrationOff } from './trials.ts';

const words = benchText.note;

/** One line under a prediction; nothing where the revision has no calibration. */
export function CalibrationNote() {
  const { project, revision, locked } = useDesk();
  const calibration = project.calibrations?.find(({ id }) => id === revision.calibrationId);
  if (!calibration) return null;
  const { trialIds, error, date, materialId, name } = calibration;
  const logged = new Set(project.benchLog.map(({ id }) => id));
  const missing = trialIds.filter((id) => !logged.has(id)).length;
  const alone = error.leaveOneOut === null ? '' : words.alone(errorText(error.leaveOneOut));
  const remarks = [
    ...(missing > 0 ? [words.missing(missing)] : []),
    ...(materialId === revision.materialId ? [] : [words.otherMaterial]),
  ];
  return (
    <p className="calibration-note" data-testid="calibration-note">
      <b title={name}>⚖ {words.title}</b> {words.by(trialIds.length, idsText(trialIds))}
      {date && ` (${date})`}. {factorsText(calibration)};{' '}
      {words.error(errorText(error.before), errorText(error.after), alone)}.
      {remarks.length > 0 && <b className="bench-old"> ▲ {remarks.join('; ')}.</b>}{' '}
      <Button className="link" isDisabled={locked} onPress={() => takeCalibrationOff(revision.id)}>
        {words.off}
      </Button>
      {locked && <span className="quiet"> ({words.locked})</span>}
    </p>
  );
}
