/** Every fault of a file that could not be opened, so that it can be mended in one go. */

import { Button } from 'react-aria-components';
import { type Issue, issueText, pathText } from '../../core/index.ts';
import { announce } from '../announce.ts';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { safeText } from '../strings/safekeeping.ts';
import { type RefusedFile, useRefused } from './faults.ts';

const words = safeText.faults;

function copyList({ name, issues }: RefusedFile): void {
  const list = [name, ...issues.map(issueText)].join('\n');
  navigator.clipboard.writeText(list).then(
    () => announce('good', words.copied),
    () => announce('bad', words.noCopy),
  );
}

/** Where a fault is: a place inside the file, or the file as a whole. */
const placeText = ({ path }: Issue, name: string): string => {
  const place = pathText(path);
  return place === '' || place === name || place.endsWith(`/${name}`) ? words.whole : place;
};

function Table({ refused }: { readonly refused: RefusedFile }) {
  const { name, issues } = refused;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a long table must be scrolled from the keyboard
    <section className="difference" aria-label={words.scroll} tabIndex={0}>
      <table className="compare-table faults-table">
        <caption className="visually-hidden">{words.caption}</caption>
        <thead>
          <tr>
            {[words.place, words.fault, words.found, words.allowed, words.remedy].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {issues.map((issue) => (
            <tr key={`${issue.code} ${pathText(issue.path)} ${issue.message}`}>
              <th scope="row">{placeText(issue, name)}</th>
              <td>{issue.message}</td>
              <td>{issue.value ?? ''}</td>
              <td>{issue.allowed ?? ''}</td>
              <td>{issue.remedy}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The dialog. */
export function FaultsDialog() {
  const refused = useRefused();
  return (
    <DialogFrame id="faults" title={words.title} wide>
      {refused && (
        <>
          <p>{words.help(refused.name, refused.issues.length)}</p>
          <Table refused={refused} />
          <Button className="tool" onPress={() => copyList(refused)}>
            {words.copy}
          </Button>
        </>
      )}
    </DialogFrame>
  );
}
