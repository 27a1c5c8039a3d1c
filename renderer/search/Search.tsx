/** Looking for a better screw: values tried, or a goal reached within limits. */

import { useEffect, useMemo } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { searchInputs } from '../../core/index.ts';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { activeRevision, useProject } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { searchText } from '../strings/search.ts';
import { GoalTab } from './GoalTab.tsx';
import { proposeFor } from './proposals.ts';
import { SweepTab } from './SweepTab.tsx';
import { setSearch, useSearch } from './store.ts';

const ways = ['sweep', 'goal'] as const;

/** Both ways; what was set up and found stays in the store while the dialog is closed. */
export function SearchRoom() {
  const project = useProject();
  const revisionId = activeRevision(project).id;
  const way = useSearch((state) => state.way);
  const inputs = useMemo(() => searchInputs(project, revisionId), [project, revisionId]);
  useEffect(() => proposeFor(project, revisionId), [project, revisionId]);
  return (
    <Tabs
      className="bench search-room"
      selectedKey={way}
      onSelectionChange={(key) => setSearch({ way: key === 'goal' ? 'goal' : 'sweep' })}
    >
      <TabList className="bench-tabs" aria-label={searchText.title}>
        {ways.map((id) => (
          <Tab key={id} id={id} className="bench-tab">
            {searchText.ways[id]}
          </Tab>
        ))}
      </TabList>
      <TabPanel id="sweep" className="bench-panel search-panel">
        <SweepTab project={project} inputs={inputs} />
      </TabPanel>
      <TabPanel id="goal" className="bench-panel search-panel">
        <GoalTab project={project} inputs={inputs} />
      </TabPanel>
    </Tabs>
  );
}

/** The dialog. A search that runs goes on while it is closed. */
export function Search() {
  const open = useView((state) => state.dialog === 'search');
  return (
    <DialogFrame id="search" title={searchText.title} wide>
      {open && <SearchRoom />}
    </DialogFrame>
  );
}
