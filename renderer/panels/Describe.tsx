/** The left side: choose a part of the machine, edit it, read what each value means. */

import type { ReactNode } from 'react';
import { Button, Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { perform } from '../commands.ts';
import { HelpLine } from '../fields/HelpLine.tsx';
import { useDrafts } from '../store/drafts.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { type PartId, partIds, setView, useView } from '../store/view.ts';
import { text } from '../strings.ts';
import { Barrel } from './Barrel.tsx';
import { useDesk } from './desk.ts';
import { Granulate } from './Granulate.tsx';
import { Drive, Hopper } from './HopperDrive.tsx';
import { Nozzle } from './Nozzle.tsx';
import { PrintDemand, Running } from './Operation.tsx';
import { partOf } from './partOf.ts';
import { Screw } from './Screw.tsx';
import { TipShank } from './TipShank.tsx';

const panels: Readonly<Record<PartId, () => ReactNode>> = {
  granulate: Granulate,
  screw: Screw,
  tip: TipShank,
  barrel: Barrel,
  nozzle: Nozzle,
  hopper: Hopper,
  drive: Drive,
  running: Running,
  print: PrintDemand,
};

/** How many refusals each part holds. */
function useCounts(): Partial<Record<PartId, number>> {
  const drafts = useDrafts();
  const issues = useEvaluation((state) => state.issues);
  const paths = [...Object.values(drafts).filter((draft) => draft.issue), ...issues].map(({ path }) => partOf(path));
  const counts: Partial<Record<PartId, number>> = {};
  for (const part of paths) if (part) counts[part] = (counts[part] ?? 0) + 1;
  return counts;
}

function LockedNote() {
  const { locked } = useDesk();
  if (!locked) return null;
  return (
    <p className="locked-note">
      <span aria-hidden="true">🔒︎</span> {text.describe.locked}{' '}
      <Button className="link" onPress={() => perform('branch')}>
        {text.describe.branchIt}
      </Button>
    </p>
  );
}

/** The description of the open revision. */
export function Describe() {
  const part = useView((state) => state.part);
  const counts = useCounts();
  return (
    <section className="pane describe" aria-label={text.describe.title}>
      <h2 className="unseen">{text.describe.title}</h2>
      <Tabs className="parts" selectedKey={part} onSelectionChange={(key) => setView({ part: key as PartId })}>
        <TabList aria-label={text.describe.title} className="part-list">
          {partIds.map((id) => (
            <Tab key={id} id={id} className="part">
              {text.parts[id]}
              {counts[id] ? <span className="count">{counts[id]}</span> : null}
            </Tab>
          ))}
        </TabList>
        <LockedNote />
        {partIds.map((id) => {
          const Panel = panels[id];
          return (
            <TabPanel key={id} id={id} className="part-panel">
              <Panel />
            </TabPanel>
          );
        })}
      </Tabs>
      <HelpLine />
    </section>
  );
}
