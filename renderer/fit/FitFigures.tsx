/** The fitted constants with their limits, how well the law follows the readings, and what is odd about them. */

import { type FittedParameter, formatNumber, type RheologyFit } from '../../core/index.ts';
import { type FieldSpec, unitText } from '../fields/spec.ts';
import { fitText as words } from '../strings/fit.ts';
import { rheologyFields, shiftFields } from '../strings.ts';

const specs: readonly FieldSpec[] = [...Object.values(rheologyFields), ...Object.values(shiftFields)].flat();

/** Name and unit of a constant of this law. */
function specOf(model: string, name: string): FieldSpec | undefined {
  const own = rheologyFields[model]?.find(({ key }) => key === `rheology.${name}`);
  return own ?? specs.find(({ key }) => key.endsWith(`.${name}`));
}

const digits = (value: number): string => formatNumber(value, 4);

function markOf({ fitted, determined }: FittedParameter): string {
  if (!fitted) return words.held;
  return determined ? words.fittedMark : words.undetermined;
}

function Row({ model, constant }: { readonly model: string; readonly constant: FittedParameter }) {
  const { name, value, low, high, fitted, determined } = constant;
  const spec = specOf(model, name);
  return (
    <tr className={fitted && !determined ? 'undetermined' : ''}>
      <th scope="row">{spec?.label ?? name}</th>
      <td>
        {digits(value)} <span className="unit">{spec ? unitText(spec.unit) : ''}</span>
      </td>
      <td>{fitted ? `${digits(low)} … ${digits(high)}` : ''}</td>
      <td className="mark">{markOf(constant)}</td>
    </tr>
  );
}

function Constants({ fit }: { readonly fit: RheologyFit }) {
  return (
    <table className="fit-constants">
      <thead>
        <tr>
          <th scope="col">{words.constant}</th>
          <th scope="col">{words.value}</th>
          <th scope="col">{words.limits}</th>
          <th scope="col">
            <span className="unseen">{words.fittedMark}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {fit.parameters.map((constant) => (
          <Row key={constant.name} model={fit.state.model} constant={constant} />
        ))}
      </tbody>
    </table>
  );
}

/** Table, quality and warnings. */
export function FitFigures({ fit, scatterPercent }: { readonly fit: RheologyFit; readonly scatterPercent: number }) {
  const { range } = fit;
  return (
    <div className="fit-figures">
      <Constants fit={fit} />
      <dl className="fit-quality">
        <dt>{words.rSquared}</dt>
        <dd>{fit.rSquared === null ? words.noSpread : fit.rSquared.toFixed(4)}</dd>
        <dt>{words.scatter}</dt>
        <dd>{words.scatterOf(formatNumber(scatterPercent, 3))}</dd>
        <dt>{words.holds}</dt>
        <dd>
          {digits(range.fromC)}–{digits(range.toC)} °C, {digits(range.shearFromPerS)}–{digits(range.shearToPerS)} 1/s
        </dd>
      </dl>
      {fit.warnings.length === 0 ? (
        <p className="quiet">{words.nothingDoubtful}</p>
      ) : (
        <ul className="fit-warnings">
          {fit.warnings.map(({ code, message }) => (
            <li key={code}>
              <span aria-hidden="true">▲</span> {message}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
