/** Revisions side by side, laid out from the question which of them is better for what. */

import { lazy, type ReactNode, Suspense, useMemo } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { Revision } from '../../core/index.ts';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { canDraw } from '../scene/canDraw.ts';
import { useProject } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { compareText } from '../strings/compare.ts';
import { Answer } from './Answer.tsx';
import { Choice } from './Choice.tsx';
import { Curves } from './Curves.tsx';
import { Described } from './Described.tsx';
import { Drawings } from './Drawings.tsx';
import { Numbers } from './Numbers.tsx';
import { type Compared, useCompared } from './runs.ts';
import { baseOf, type CompareTab, chosenIds, compareTabs, setCompare, useCompare } from './store.ts';

const words = compareText;

// Three-dimensional drawing is most of the program's code; the tables need not wait for it.
const Machines = lazy(() => import('./Machines.tsx'));

/** What every part of the dialog shows. */
export interface PartProps {
  readonly revisions: readonly Revision[];
  readonly compared: readonly Compared[];
  readonly base: string | null;
}

function InThree({ revisions, compared, base }: PartProps) {
  if (!canDraw()) return <p>{words.machines.noWebgl}</p>;
  return (
    <Suspense fallback={<p className="quiet">{words.machines.loading}</p>}>
      <Machines {...{ revisions, compared, base }} />
    </Suspense>
  );
}

const parts: Readonly<Record<CompareTab, (props: PartProps) => ReactNode>> = {
  numbers: Numbers,
  described: Described,
  drawings: Drawings,
  curves: Curves,
  machines: InThree,
};

function Parts(props: PartProps) {
  const tab = useCompare((state) => state.tab);
  return (
    <Tabs
      className="compare-parts"
      selectedKey={tab}
      onSelectionChange={(key) => setCompare({ tab: key as CompareTab })}
    >
      <TabList className="bench-tabs compare-tabs" aria-label={words.title}>
        {compareTabs.map((id) => (
          <Tab key={id} id={id} className="bench-tab">
            {words.tabs[id]}
          </Tab>
        ))}
      </TabList>
      {compareTabs.map((id) => {
        const Part = parts[id];
        return (
          <TabPanel key={id} id={id} className="compare-panel">
            <Part {...props} />
          </TabPanel>
        );
      })}
    </Tabs>
  );
}

function Comparison() {
  const project = useProject();
  const chosen = useCompare((state) => state.chosen);
  const wanted = useCompare((state) => state.base);
  const ids = useMemo(() => chosenIds(project, chosen), [project, chosen]);
  const base = baseOf(ids, wanted);
  const compared = useCompared(project, ids);
  const revisions = useMemo(
    () => ids.flatMap((id) => project.revisions.filter((revision) => revision.id === id)),
    [project, ids],
  );
  return (
    <div className="compare-room">
      <Choice {...{ project, ids, base, compared }} />
      {ids.length > 1 ? (
        <>
          <Answer compared={compared} />
          <Parts {...{ revisions, compared, base }} />
        </>
      ) : (
        <p className="quiet">{project.revisions.length > 1 ? words.chooseMore : words.onlyOne}</p>
      )}
    </div>
  );
}

/** The dialog; it calculates only while it is open, and what it found stays. */
export function Compare() {
  const open = useView((state) => state.dialog === 'compare');
  return (
    <DialogFrame id="compare" title={words.title} wide>
      {open && <Comparison />}
    </DialogFrame>
  );
}
