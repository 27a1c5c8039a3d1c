/** The window: head, describe, see, decide. Panes and nothing else. */

import { useEffect, useLayoutEffect } from 'react';
import { BenchLog } from './bench/BenchLog.tsx';
import { Colour } from './colour/Colour.tsx';
import { Compare } from './compare/Compare.tsx';
import { Doubt } from './doubt/Doubt.tsx';
import { FitDialog } from './fit/FitDialog.tsx';
import { Handover } from './handover/Handover.tsx';
import { useLook } from './look.ts';
import { CommandList } from './panels/CommandList.tsx';
import { Describe } from './panels/Describe.tsx';
import { Discard } from './panels/Discard.tsx';
import { Examples } from './panels/Examples.tsx';
import { Notice } from './panels/Notice.tsx';
import { NewProject } from './panels/newProject/NewProject.tsx';
import { Results } from './panels/Results.tsx';
import { Revisions } from './panels/Revisions.tsx';
import { See } from './panels/See.tsx';
import { TopBar } from './panels/TopBar.tsx';
import { Templates } from './panels/templates/Templates.tsx';
import { Search } from './search/Search.tsx';
import { isUnsaved, useProjectState } from './store/project.ts';
import { useView } from './store/view.ts';
import { text } from './strings.ts';
import { Tour } from './tour/Tour.tsx';

/** Nothing but a word, or why the first project could not be opened, until there is a project. */
function Waiting() {
  return (
    <main className="waiting">
      <Notice />
      <p>{text.loading}</p>
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
      <main className="desk">
        <Describe />
        <See />
        <Results />
      </main>
      <Notice />
      <Revisions />
      <Compare />
      <Colour />
      <Doubt />
      <Search />
      <BenchLog />
      <FitDialog />
      <Handover />
      <Examples />
      <Templates />
      <NewProject />
      <Discard />
      <CommandList />
      <Tour />
    </div>
  );
}
