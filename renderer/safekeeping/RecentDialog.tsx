/** Files opened or saved before, newest first. */

import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { type Issue, issueText } from '../../core/index.ts';
import { announce } from '../announce.ts';
import { getBridge, type RecentFile } from '../bridge.ts';
import { openRecentFile } from '../files.ts';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { useView } from '../store/view.ts';
import { safeText } from '../strings/safekeeping.ts';
import { forgetRecent, listRemembered } from './recent.ts';

const words = safeText.recent;

function Entry({ file, taken }: { readonly file: RecentFile; taken(): void }) {
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const remove = () => {
    forgetRecent(file.path);
    announce('good', words.removed(file.name));
    taken();
  };
  return (
    <li>
      <Button className="command example" onPress={() => void openRecentFile(file.handle, setIssues)}>
        <b>{file.name}</b>
        <span className="quiet kept-path">{file.path}</span>
      </Button>
      {issues.length > 0 && (
        <div className="recent-gone" role="alert">
          <p className="issue">
            ▲ {words.gone} {issues.map(issueText).join(' ')}
          </p>
          <Button className="tool" aria-label={`${words.remove}: ${file.name}`} onPress={remove}>
            {words.remove}
          </Button>
        </div>
      )}
    </li>
  );
}

function List() {
  const [files, setFiles] = useState<readonly RecentFile[] | null>(null);
  useEffect(() => {
    getBridge()
      .listRecent()
      .then((listed) => {
        if (listed.ok) setFiles(listRemembered(listed.value));
        else announce('bad', listed.issues.map(issueText).join(' '));
      });
  }, []);
  if (files === null) return null;
  if (files.length === 0) return <p>{words.none}</p>;
  return (
    <ul className="command-list">
      {files.map((file) => (
        <Entry key={file.path} file={file} taken={() => setFiles(files.filter((one) => one !== file))} />
      ))}
    </ul>
  );
}

/** The dialog. */
export function RecentDialog() {
  const open = useView((state) => state.dialog === 'recent');
  return (
    <DialogFrame id="recent" title={words.title}>
      {open && <List />}
    </DialogFrame>
  );
}
