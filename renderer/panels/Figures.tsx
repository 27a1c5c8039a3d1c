/** All figures in groups, most of them closed at first, each with what it rests on when asked. */

import { Button } from 'react-aria-components';
import type { PresentedGroup, PresentedRow } from '../../core/index.ts';
import { showCurve } from '../plots/chosenCurve.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { text } from '../strings.ts';
import { DoubtSign } from './Explanation.tsx';
import { FigureRow, withBases } from './FigureRow.tsx';
import { setGroupsOpen, useGroupOpen } from './figuresOpen.ts';

const words = text.figures;

/** Groups that have a panel of their own. */
const shownElsewhere = ['print'];

/** The curve that belongs to a group. */
const curveOf: Readonly<Record<string, string>> = {
  output: 'headPressure',
  residence: 'residence',
  feeding: 'fill',
  melting: 'molten',
  drive: 'torque',
  warmUp: 'warmUp',
};

/** Leads to the curve of a group, where there is one. */
function CurveLink({ group }: { readonly group: PresentedGroup }) {
  const curve = curveOf[group.id];
  const title = useEvaluation((state) => state.presentation?.series.find(({ id }) => id === curve)?.title);
  if (curve === undefined || title === undefined) return null;
  return (
    <p className="figure-curve">
      <Button className="link" onPress={() => showCurve(curve)}>
        {words.curve}: {title}
      </Button>
    </p>
  );
}

function Group({ group, rows }: { readonly group: PresentedGroup; readonly rows: readonly PresentedRow[] }) {
  const open = useGroupOpen(group.id);
  return (
    <details
      className="figure-group"
      data-group={group.id}
      open={open}
      onToggle={(event) => setGroupsOpen([group.id], event.currentTarget.open)}
    >
      <summary>
        {group.title} <DoubtSign doubt={rows.find(({ basis }) => basis?.doubt)?.basis?.doubt} />
        <span className="quiet group-count">{rows.length}</span>
      </summary>
      {open && (
        <>
          <CurveLink group={group} />
          <dl>
            {withBases(rows).map((row) => (
              <FigureRow key={row.id} group={group.id} row={row} />
            ))}
          </dl>
        </>
      )}
    </details>
  );
}

/** The groups of the latest prediction. */
export function Figures() {
  const presentation = useEvaluation((state) => state.presentation);
  if (!presentation) return null;
  const groups = presentation.groups
    .map((group) => ({ group, rows: group.rows.filter((row) => row.text !== '') }))
    .filter(({ group, rows }) => rows.length > 0 && !shownElsewhere.includes(group.id));
  const ids = groups.map(({ group }) => group.id);
  return (
    <section className="figures" aria-label={words.title}>
      <header>
        <h2>{words.title}</h2>
        <span>
          <Button className="link" onPress={() => setGroupsOpen(ids, true)}>
            {words.openAll}
          </Button>
          {' · '}
          <Button className="link" onPress={() => setGroupsOpen(ids, false)}>
            {words.closeAll}
          </Button>
        </span>
      </header>
      {groups.map(({ group, rows }) => (
        <Group key={group.id} group={group} rows={rows} />
      ))}
    </section>
  );
}
