/** How well the material is known, prediction by prediction; each name leads to its field. */

import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { materialCompleteness, type PredictionTopic, type TopicCompleteness } from '../../../core/index.ts';
import { openFit } from '../../fit/store.ts';
import { text } from '../../strings.ts';
import { Group } from '../Group.tsx';
import { knownPlace } from './knownPlaces.ts';
import { goToPlace } from './places.tsx';
import type { PlacedMaterial } from './useMaterial.ts';

const words = text.describe.granulate;
/** Signs of how well something is known, told apart by shape as well as by colour. */
export const knownSigns = { known: '●', doubtful: '◐', missing: '○' } as const;

function Names({ placed, names }: { readonly placed: PlacedMaterial; readonly names: readonly string[] }) {
  return names.map((name, index) => {
    const place = knownPlace(placed.material, name);
    return (
      <span key={name}>
        {place ? (
          <Button className="link" onPress={() => goToPlace([...placed.root, ...place])}>
            {name}
          </Button>
        ) : (
          name
        )}
        {index < names.length - 1 && ', '}
      </span>
    );
  });
}

function Detail({ placed, topic }: { readonly placed: PlacedMaterial; readonly topic: TopicCompleteness }) {
  const { missing, doubtful } = topic;
  return (
    <div className="known-detail">
      <h4>{words.topics[topic.topic]}</h4>
      {topic.state === 'known' && <p>{words.knownMeaning.known}</p>}
      {missing.length > 0 && (
        <p>
          {words.knownMeaning.missing} <Names placed={placed} names={missing} />
        </p>
      )}
      {doubtful.length > 0 && (
        <p>
          {words.knownMeaning.doubtful} <Names placed={placed} names={doubtful} />
        </p>
      )}
    </div>
  );
}

function Chip(props: { readonly topic: TopicCompleteness; readonly open: boolean; toggle(): void }) {
  const { topic, state } = props.topic;
  return (
    <Button className={`known-chip known-${state}`} aria-expanded={props.open} onPress={props.toggle}>
      <span aria-hidden="true">{knownSigns[state]}</span> {words.topics[topic]} <i>{words.knownStates[state]}</i>
    </Button>
  );
}

/** The group. */
export function Known(placed: PlacedMaterial) {
  const { material } = placed;
  const topics = useMemo(() => materialCompleteness(material), [material]);
  const [open, setOpen] = useState<PredictionTopic | null>(null);
  const shown = topics.find(({ topic }) => topic === open);
  return (
    <Group title={words.known}>
      {material.rheology.model === 'unknown' && (
        <p className="lacks-viscosity" role="status">
          {words.lacksViscosity}{' '}
          <Button className="link" onPress={() => openFit(material.id)}>
            {words.fitIt}
          </Button>
        </p>
      )}
      <ul className="known">
        {topics.map((topic) => (
          <li key={topic.topic}>
            <Chip
              topic={topic}
              open={topic.topic === open}
              toggle={() => setOpen(topic.topic === open ? null : topic.topic)}
            />
          </li>
        ))}
      </ul>
      {shown && <Detail placed={placed} topic={shown} />}
    </Group>
  );
}
