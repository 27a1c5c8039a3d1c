/** Doubtful points of the design: what was seen, why it matters, what to change, and where. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Finding, Severity } from '../../core/index.ts';
import { showPosition } from '../store/view.ts';
import { text } from '../strings.ts';

const words = text.findings;
const signs: Readonly<Record<Severity, string>> = { stop: '⬣', warn: '▲', note: '●', caution: '◆' };
const order: readonly Severity[] = ['stop', 'warn', 'note', 'caution'];

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
        <span className="saw">{finding.saw}</span>
        <span className="where">{finding.where}</span>
      </Button>
      {open && (
        <div className="finding-body">
          <p>
            <b>{words.why}:</b> {finding.why}
          </p>
          <p>
            <b>{words.change}:</b> {finding.change}
          </p>
          {z !== null && (
            <Button className="link" onPress={() => showPosition(z, finding.where)}>
              {words.show}
            </Button>
          )}
        </div>
      )}
    </li>
  );
}

/** The list, gravest first. */
export function Findings({ findings }: { readonly findings: readonly Finding[] }) {
  const sorted = [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  return (
    <section className="findings" aria-label={words.title}>
      <h2>
        {words.title} <span className="quiet">{findings.length}</span>
      </h2>
      {sorted.length === 0 && <p className="quiet">{words.none}</p>}
      <ul>
        {sorted.map((finding) => (
          <Item key={`${finding.code}-${finding.where}`} finding={finding} />
        ))}
      </ul>
    </section>
  );
}
