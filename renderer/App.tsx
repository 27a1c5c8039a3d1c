/** The window: head, describe, see, decide. Panes and nothing else. */

import { lazy, useEffect, useLayoutEffect } from 'react';
import { useLook } from './look.ts';
import { CommandList } from './panels/CommandList.tsx';
import { Describe } from './panels/Describe.tsx';
import { Discard } from './panels/Discard.tsx';
import { Later } from './panels/Later.tsx';
import { Notice } from './panels/Notice.tsx';
import { Results } from './panels/Results.tsx';
import { See } from './panels/See.tsx';
import { CommandButton, TopBar } from './panels/TopBar.tsx';
import { Banners } from './safekeeping/Banners.tsx';
import { DropHint } from './safekeeping/DropHint.tsx';
import { useRefused } from './safekeeping/faults.ts';
import { isUnsaved, useProjectState } from './store/project.ts';
import { useView } from './store/view.ts';
import { safeText } from './strings/safekeeping.ts';
import { text } from './strings.ts';
import { Tour } from './tour/Tour.tsx';

const AboutDialog = lazy(async () => ({ default: (await import('./safekeeping/AboutDialog.tsx')).AboutDialog }));
const BenchLog = lazy(async () => ({ default: (await import('./bench/BenchLog.tsx')).BenchLog }));
const Colour = lazy(async () => ({ default: (await import('./colour/Colour.tsx')).Colour }));
const Compare = lazy(async () => ({ default: (await import('./compare/Compare.tsx')).Compare }));
const ConflictDialog = lazy(async () => ({
  default: (await import('./safekeeping/ConflictDialog.tsx')).ConflictDialog,
}));
const Doubt = lazy(async () => ({ default: (await import('./doubt/Doubt.tsx')).Doubt }));
const Evidence = lazy(async () => ({ default: (await import('./checks/Evidence.tsx')).Evidence }));
const Examples = lazy(async () => ({ default: (await import('./panels/Examples.tsx')).Examples }));
const FaultsDialog = lazy(async () => ({ default: (await import('./safekeeping/FaultsDialog.tsx')).FaultsDialog }));
const FitDialog = lazy(async () => ({ default: (await import('./fit/FitDialog.tsx')).FitDialog }));
const Handover = lazy(async () => ({ default: (await import('./handover/Handover.tsx')).Handover }));
const Handbook = lazy(async () => ({ default: (await import('./handbook/Handbook.tsx')).Handbook }));
const NewProject = lazy(async () => ({ default: (await import('./panels/newProject/NewProject.tsx')).NewProject }));
const RecentDialog = lazy(async () => ({ default: (await import('./safekeeping/RecentDialog.tsx')).RecentDialog }));
const RecoveryDialog = lazy(async () => ({
  default: (await import('./safekeeping/RecoveryDialog.tsx')).RecoveryDialog,
}));
const Revisions = lazy(async () => ({ default: (await import('./panels/Revisions.tsx')).Revisions }));
const Search = lazy(async () => ({ default: (await import('./search/Search.tsx')).Search }));
const Templates = lazy(async () => ({ default: (await import('./panels/templates/Templates.tsx')).Templates }));

/** Nothing but a word until there is a project; where the first could not be opened, why, and the ways on. */
function Waiting() {
  const refused = useRefused();
  return (
    <main className="waiting">
      <Banners />
      <Notice />
      <p>{refused ? safeText.faults.notOpen : text.loading}</p>
      {refused && (
        <p className="acts">
          <CommandButton id="open" />
          <CommandButton id="examples" />
          <CommandButton id="recent" />
        </p>
      )}
      <Later id="faults" of={FaultsDialog} />
      <Later id="examples" of={Examples} />
      <Later id="recent" of={RecentDialog} />
      <Later id="recovery" of={RecoveryDialog} />
      <DropHint />
    </main>
  );
}

/** Everything. */
export function App() {
  // Views that write numbers are drawn anew when these are written otherwise.
  useLook();
  const open = useProjectState((state) => state.history !== null);
  const theme = useView((state) => state.theme);
  // before the charts' effects, which read their colours from the style sheet
  useLayoutEffect(() => {
    document.documentElement.dataset.theme = theme;
  }, [theme]);
  const title = useProjectState((state) => {
    const name = state.history?.present.name;
    return name ? `${isUnsaved(state) ? '• ' : ''}${name} – ${text.appName}` : text.appName;
  });
  useEffect(() => {
    document.title = title;
  }, [title]);
  if (!open) return <Waiting />;
  return (
    <div className="window">
      <TopBar />
      <Banners />
      <main className="desk">
        <Describe />
        <See />
        <Results />
      </main>
      <Notice />
      <Later id="revisions" of={Revisions} />
      <Later id="compare" of={Compare} />
      <Later id="colour" of={Colour} />
      <Later id="doubt" of={Doubt} />
      <Later id="search" of={Search} />
      <Later id="bench" of={BenchLog} />
      <Later id="fit" of={FitDialog} />
      <Later id="handover" of={Handover} />
      <Later id="examples" of={Examples} />
      <Later id="templates" of={Templates} />
      <Later id="new" of={NewProject} />
      <Later id="recovery" of={RecoveryDialog} />
      <Later id="conflict" of={ConflictDialog} />
      <Later id="faults" of={FaultsDialog} />
      <Later id="recent" of={RecentDialog} />
      <Later id="evidence" of={Evidence} />
      <Later id="handbook" of={Handbook} />
      <Later id="about" of={AboutDialog} />
      <Discard />
      <CommandList />
      <Tour />
      <DropHint />
    </div>
  );
}
