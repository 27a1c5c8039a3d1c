/** Doubtful points of the design: what was seen, why it matters, what to change, and where; then the standing cautions. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { type Finding, heldTogether, type Severity } from '../../core/index.ts';
import { activeRevision, useProjectState } from '../store/project.ts';
import { showPosition } from '../store/view.ts';
import { text } from '../strings.ts';

const words = text.findings;
const signs: Readonly<Record<Severity, string>> = { stop: '⬣', warn: '▲', note: '●', caution: '◆' };
const order: readonly Severity[] = ['stop', 'warn', 'note', 'caution'];

/** Why, what to change, and the way to the place. */
function Body({ finding }: { readonly finding: Finding }) {
  const { z } = finding;
  return (
    <div className="finding-body">
      <p>
        <b>{words.why}:</b> {heldTogether(finding.why)}
      </p>
      <p>
        <b>{words.change}:</b> {heldTogether(finding.change)}
      </p>
      {z !== null && (
        <Button className="link" onPress={() => showPosition(z, finding.where)}>
          {words.show}
        </Button>
      )}
    </div>
  );
}

function Item({ finding }: { readonly finding: Finding }) {
  const [open, setOpen] = useState(finding.severity === 'stop');
  const { z } = finding;
  const press = () => {
    setOpen(!open);
    if (z !== null && !open) showPosition(z, finding.where);
  };
  return (
    <li className={`finding ${finding.severity}`} data-code={finding.code}>
      <Button className="finding-head" aria-expanded={open} onPress={press}>
        <span className="severity">
          <span aria-hidden="true">{signs[finding.severity]}</span> {words.severities[finding.severity]}
        </span>
        <span className="where">{finding.where}</span>
        <span className="saw">{heldTogether(finding.saw)}</span>
      </Button>
      {open && <Body finding={finding} />}
    </li>
  );
}

/** Name of the material that is run; every caution about it begins with that name. */
const useMaterialName = (): string | undefined =>
  useProjectState(({ history }) => {
    if (!history) return undefined;
    const { materialId } = activeRevision(history.present);
    return history.present.materials.find(({ id }) => id === materialId)?.name;
  });

/** One line until opened; there is no way to take it off the list. */
function Caution({ finding }: { readonly finding: Finding }) {
  const [open, setOpen] = useState(false);
  const prefix = `${useMaterialName()}: `;
  const { saw, code } = finding;
  const topic = words.topics[code];
  // the name alone would fill the line
  const line = !open && saw.startsWith(prefix) ? saw.slice(prefix.length) : saw;
  return (
    <li className={open ? 'finding standing open' : 'finding standing'} data-code={finding.code}>
      <Button className="caution-head" aria-expanded={open} onPress={() => setOpen(!open)}>
        <span className="severity" aria-hidden="true">
          {signs.caution}
        </span>
        <span className="unseen">{words.severities.caution}: </span>
        <span className="saw" title={saw}>
          {topic && <b>{topic}: </b>}
          {heldTogether(line)}
        </span>
      </Button>
      {open && <Body finding={finding} />}
    </li>
  );
}

/** Points of this design, gravest first, then the cautions that stand for every machine of the kind. */
export function Findings({ findings }: { readonly findings: readonly Finding[] }) {
  const sorted = [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  const points = sorted.filter(({ severity }) => severity !== 'caution');
  const cautions = sorted.filter(({ severity }) => severity === 'caution');
  const key = ({ code, where }: Finding) => `${code}-${where}`;
  return (
    <section className="findings" aria-label={words.title}>
      <h2>
        {words.title} <span className="quiet">{points.length}</span>
      </h2>
      {points.length === 0 && <p className="quiet">{words.none}</p>}
      <ul>
        {points.map((finding) => (
          <Item key={key(finding)} finding={finding} />
        ))}
      </ul>
      {cautions.length > 0 && (
        <>
          <h3 className="cautions-head">
            {words.cautions} <span className="quiet">{cautions.length}</span>
          </h3>
          <ul className="standing-list">
            {cautions.map((finding) => (
              <Caution key={key(finding)} finding={finding} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
