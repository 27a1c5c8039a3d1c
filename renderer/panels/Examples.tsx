/** Example projects that ship with the program. */

import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { type ExampleInfo, getBridge } from '../bridge.ts';
import { announce, openExample } from '../files.ts';
import { setView, useView } from '../store/view.ts';
import { text } from '../strings.ts';
import { DialogFrame } from './DialogFrame.tsx';

function List() {
  const [examples, setExamples] = useState<readonly ExampleInfo[]>([]);
  useEffect(() => {
    getBridge()
      .listExamples()
      .then((listed) => {
        if (listed.ok) setExamples(listed.value);
        else announce('bad', listed.issues.map((issue) => issue.message).join(' '));
      });
  }, []);
  const open = (id: string) => {
    setView({ dialog: 'none' });
    void openExample(id);
  };
  return (
    <ul className="command-list">
      {examples.map(({ id, title, note }) => (
        <li key={id}>
          <Button className="command example" onPress={() => open(id)}>
            <b>{title}</b>
            <span className="quiet">{note}</span>
          </Button>
        </li>
      ))}
    </ul>
  );
}

/** The dialog. */
export function Examples() {
  const open = useView((state) => state.dialog === 'examples');
  return (
    <DialogFrame id="examples" title={text.examples.title}>
      <p className="quiet">{text.examples.help}</p>
      {open && <List />}
    </DialogFrame>
  );
}
