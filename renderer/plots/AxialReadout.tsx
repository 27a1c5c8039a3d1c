/** Key of the lanes along the axis, with the values under the pointer or at the mark. */

import { toSi } from '../../core/index.ts';
import { formatNumber, formatQuantity, useLook } from '../look.ts';
import { useView } from '../store/view.ts';
import { text } from '../strings.ts';
import type { AxialSeries } from './axialSeries.ts';
import { suitedPressure } from './pressureUnit.ts';

const words = text.axial;

/** Index of the point at or before z (mm). */
const indexAt = (z: readonly number[], at: number): number =>
  Math.max(
    0,
    z.findLastIndex((value) => value <= at + 1e-9),
  );

/** Where the pointer is, or else the mark. m; null where neither is. */
const useReadZ = (): number | null => useView((state) => state.hoverZ ?? state.mark?.z ?? null);

/** The position that is read, in words. */
export function ReadPlace() {
  useLook();
  const z = useReadZ();
  const label = useView((state) => (state.hoverZ === null ? state.mark?.label : undefined));
  if (z === null) return <span className="at quiet">{words.point}</span>;
  return <span className="at">{`z ${formatQuantity(z, 'mm')}${label ? `: ${label}` : ''}`}</span>;
}

type Values = readonly (number | null)[];

/** Name and value of each line; every cell keeps its place, so that nothing moves while the pointer does. */
export function AxialReadout({ series }: { readonly series: AxialSeries | null }) {
  useLook();
  const z = useReadZ();
  const index = series && z !== null ? indexAt(series.z, z * 1000) : null;
  const value = (values: Values | undefined, unit: string, digits = 3) => {
    if (index === null) return '';
    const found = values?.[index] ?? null;
    return found === null ? '–' : `${formatNumber(found, digits)} ${unit}`;
  };
  const film = () => {
    const found = index === null ? null : (series?.film[index] ?? null);
    return found === null ? value(series?.film, '') : formatQuantity(toSi(found, 'mm'), 'mm', 2);
  };
  const pressure = () => {
    const found = index === null ? null : (series?.pressure[index] ?? null);
    return found === null || !series ? value(series?.pressure, '') : suitedPressure(found, series.pressureUnit);
  };
  const share = (values: Values | undefined) => {
    const found = index === null ? null : (values?.[index] ?? null);
    return found === null ? value(values, '%') : `${formatNumber(Math.round(10 * found) / 10, 3)} %`;
  };
  const cells = [
    ['pressure', words.pressure, pressure()],
    ['melt', words.melt, value(series?.melt, '°C')],
    ['solid', words.granules, value(series?.solid, '°C')],
    ['filled', words.filled, share(series?.filled)],
    ['wall', words.wall, value(series?.wall, '°C')],
    ['core', words.core, value(series?.core, '°C')],
    ['film', words.film, film()],
    ['molten', words.molten, share(series?.molten)],
  ] as const;
  return (
    <dl className="axial-legend">
      {cells.map(([key, name, said]) => (
        <div key={key}>
          <dt className={`key key-${key}`}>{name}</dt>
          <dd>{said}</dd>
        </div>
      ))}
    </dl>
  );
}
