/** Calibrations that the project keeps: used again, or deleted where no revision uses them. */

import { Button } from 'react-aria-components';
import type { Calibration, Revision } from '../../core/index.ts';
import { useDesk } from '../panels/desk.ts';
import { benchText } from '../strings/bench.ts';
import { errorText, idsText, timesText } from './figures.ts';
import type { FactorName } from './names.ts';
import { applyKept, dropKept } from './trials.ts';

const words = benchText.calibrate;

/** Found factors in a sentence. */
export const factorsText = ({ factors }: Calibration): string =>
  (Object.keys(benchText.factors) as FactorName[])
    .filter((name) => factors[name].fitted)
    .map((name) => `${benchText.factors[name].label.toLowerCase()} ${timesText(factors[name].value)}`)
    .join(', ');

function Row(props: {
  readonly calibration: Calibration;
  readonly users: readonly Revision[];
  readonly revision: Revision;
}) {
  const { calibration, users, revision } = props;
  const { id, name, date, trialIds, error } = calibration;
  const fits = revision.materialId === calibration.materialId && revision.calibrationId !== id && !revision.locked;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="nowrap">{date ?? '–'}</td>
      <td className="words">{factorsText(calibration)}</td>
      <td className="words">{idsText(trialIds)}</td>
      <td className="nowrap">{`${errorText(error.before)} → ${errorText(error.after)}`}</td>
      <td>{users.length > 0 ? `${words.usedBy} ${users.map((user) => user.id).join(', ')}` : words.unused}</td>
      <td className="acts">
        <Button className="tool small" isDisabled={!fits} onPress={() => applyKept(revision.id, id)}>
          {words.use(revision.id)}
        </Button>
        <Button className="tool small" isDisabled={users.length > 0} onPress={() => dropKept(id)}>
          {words.drop}
        </Button>
      </td>
    </tr>
  );
}

/** The list; nothing where there is none. */
export function KeptCalibrations() {
  const { project, revision } = useDesk();
  const kept = project.calibrations ?? [];
  if (kept.length === 0) return null;
  return (
    <section className="kept">
      <h3>{words.kept}</h3>
      <table className="bench-table" data-testid="kept">
        <tbody>
          {kept.map((calibration) => {
            const users = project.revisions.filter(({ calibrationId }) => calibrationId === calibration.id);
            return <Row key={calibration.id} {...{ calibration, users, revision }} />;
          })}
        </tbody>
      </table>
    </section>
  );
}
