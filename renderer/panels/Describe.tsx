/** The left side: choose a part of the machine, edit it, read what each value means. */

import type { ReactNode } from 'react';
import { Button, Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { perform } from '../commands.ts';
import { HelpLine } from '../fields/HelpLine.tsx';
import { type Draft, useDrafts } from '../store/drafts.ts';
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

/** How many refusals a part holds: of what is typed and of what is described. Drawn by itself, apart from the list. */
function PartCount({ part }: { readonly part: PartId }) {
  const typed = useDrafts((drafts) => refusalsIn(part, Object.values(drafts)));
  const found = useEvaluation(({ issues }) => issues.filter(({ path }) => partOf(path) === part).length);
  return typed + found > 0 ? <span className="count">{typed + found}</span> : null;
}

const refusalsIn = (part: PartId, drafts: readonly Draft[]): number =>
  drafts.filter(({ issue, path }) => issue && partOf(path) === part).length;

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
  return (
    <section className="pane describe" aria-label={text.describe.title}>
      <h2 className="unseen">{text.describe.title}</h2>
      <Tabs className="parts" selectedKey={part} onSelectionChange={(key) => setView({ part: key as PartId })}>
        <TabList aria-label={text.describe.title} className="part-list">
          {partIds.map((id) => (
            <Tab key={id} id={id} className="part">
              {text.parts[id]}
              <PartCount part={id} />
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
