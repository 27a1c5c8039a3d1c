/** What a new project takes for granted: value, rule, source. */

import { assumedValues, lookText, type Project } from '../../../core/index.ts';
import { showNumber } from '../../fields/quantity.ts';
import { unitText } from '../../fields/spec.ts';
import { useLook } from '../../look.ts';
import { newText as words } from '../../strings/templates.ts';

/** The table. */
export function AssumedTable({ project }: { readonly project: Project }) {
  const look = useLook();
  return (
    <table className="assumed">
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">{words.assumed}</span>
          </th>
          <th scope="col">{words.value}</th>
          <th scope="col">{words.rule}</th>
          <th scope="col">{words.source}</th>
        </tr>
      </thead>
      <tbody>
        {assumedValues(project).map(({ label, value, unit, rule, source }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td>
              {showNumber(value, unit || 'ratio', look)} {unit && unitText(unit, look)}
            </td>
            <td>{lookText(rule, look)}</td>
            <td className="quiet">{source}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
