/** How the machine is run and what the print asks for; shared by all revisions, so never locked. */

import type { Project } from '../../core/index.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { setValue } from '../store/edits.ts';
import { applyEdit, useProject } from '../store/project.ts';
import { printFields, runningFields, text } from '../strings.ts';
import { Fields, Group } from './Group.tsx';

const words = text.describe;
type Feed = Project['process']['feed'];
const feedPath = ['process', 'feed'];

/** Speed, feeding, temperatures around. */
export function Running() {
  const { feed } = useProject().process;
  const choose = (kind: Feed['kind']) => {
    const next: Feed = kind === 'starved' ? { kind, rateGPerMin: 5 } : { kind };
    applyEdit(setValue(feedPath, next), { label: words.feed });
  };
  const specs = runningFields.filter((spec) => feed.kind === 'starved' || spec.key !== 'process.feed.rateGPerMin');
  return (
    <Group title={words.running}>
      <ChoiceField
        path={feedPath}
        label={words.feed}
        help={words.feedHelp}
        value={feed.kind}
        options={words.feeds}
        disabled={false}
        onChoose={choose}
      />
      <Fields root={[]} specs={specs} locked={false} />
    </Group>
  );
}

/** The demand of the print. */
export function PrintDemand() {
  return (
    <Group title={words.print}>
      <Fields root={[]} specs={printFields} locked={false} />
      <p className="quiet">{words.layingAlone}</p>
    </Group>
  );
}
