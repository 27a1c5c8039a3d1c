/** The bench log: trials, their import, measured against predicted, calibration, next trials, colour from pictures. */

import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { Notice } from '../panels/Notice.tsx';
import { useView } from '../store/view.ts';
import { benchText } from '../strings/bench.ts';
import { CalibrateTab } from './CalibrateTab.tsx';
import { ImportTab } from './ImportTab.tsx';
import { MeasuredTab } from './MeasuredTab.tsx';
import { PhotoTab } from './PhotoTab.tsx';
import { PlanTab } from './PlanTab.tsx';
import { type BenchTab, benchTabs, setBench, useBench } from './store.ts';
import { TrialsTab } from './TrialsTab.tsx';

const panels: Readonly<Record<BenchTab, () => ReactNode>> = {
  trials: TrialsTab,
  import: ImportTab,
  measured: MeasuredTab,
  calibrate: CalibrateTab,
  plan: PlanTab,
  photo: PhotoTab,
};

function Parts() {
  const tab = useBench((state) => state.tab);
  return (
    <Tabs className="bench" selectedKey={tab} onSelectionChange={(key) => setBench({ tab: key as BenchTab })}>
      <TabList className="bench-tabs" aria-label={benchText.title}>
        {benchTabs.map((id) => (
          <Tab key={id} id={id} className="bench-tab">
            {benchText.tabs[id]}
          </Tab>
        ))}
      </TabList>
      <Notice />
      {benchTabs.map((id) => {
        const Panel = panels[id];
        return (
          <TabPanel key={id} id={id} className="bench-panel">
            <Panel />
          </TabPanel>
        );
      })}
    </Tabs>
  );
}

/** The dialog; nothing of it is worked out while it is closed. */
export function BenchLog() {
  const open = useView((state) => state.dialog === 'bench');
  return (
    <DialogFrame id="bench" title={benchText.title} wide>
      {open && <Parts />}
    </DialogFrame>
  );
}
