/** What lies under the dimensions beside the machine: axis, borders, zones, the chosen entry, linked positions. */

import type { Revision } from '../../core/index.ts';
import type { BoxSize } from '../plots/useBox.ts';
import { useView } from '../store/view.ts';
import { extentOf } from './choosing.ts';
import { chosenPath } from './outlines.ts';
import { useDrawing } from './store.ts';
import { boundsOf, type ToPixels } from './viewport.ts';

interface Props {
  readonly revision: Revision;
  readonly at: ToPixels;
}

/** Height of a zone's bar and least height of a wall that can carry its name, px. */
const barHeight = 5;
const nameHeight = 14;

function Zones({ revision, at }: Props) {
  const { zones, outerDiameterMm, boreDiameterMm } = revision.barrel;
  const [wall, outer] = [at.y(-boreDiameterMm / 2), at.y(-outerDiameterMm / 2)];
  return zones.map((zone, index) => {
    const [from, to] = [at.x(zone.startMm), at.x(zone.endMm)];
    const label = zone.kind === 'heated' ? `${zone.name} ${zone.setTempC} °C` : zone.name;
    const room = Math.floor((to - from - 12) / 6.6);
    const shown = label.length > room ? `${zone.name.slice(0, Math.max(0, room - 1))}…` : label;
    return (
      // biome-ignore lint/suspicious/noArrayIndexKey: zones have no identity but their place
      <g key={index} className={`draw-zone ${zone.kind}`}>
        <title>{label}</title>
        <rect x={from} y={outer - barHeight} width={Math.max(0, to - from - 1)} height={barHeight} />
        {room > 3 && outer - wall - barHeight > nameHeight && (
          <text className="zone-name" x={(from + to) / 2} y={(wall + outer - barHeight) / 2 + 4}>
            {shown}
          </text>
        )}
      </g>
    );
  });
}

/** Axis, and the borders between sections across the channel. */
function Guides({ revision, at }: Props) {
  const { start, end } = boundsOf(revision);
  const r = revision.barrel.boreDiameterMm / 2;
  let z = 0;
  const borders = revision.screw.sections.map(({ lengthMm }) => {
    z += lengthMm;
    return z;
  });
  return (
    <>
      <line className="drawn-axis" x1={at.x(start * 1000) - 8} x2={at.x(end * 1000) + 8} y1={at.y(0)} y2={at.y(0)} />
      {borders.map((border) => (
        <line key={border} className="drawn-border" x1={at.x(border)} x2={at.x(border)} y1={at.y(r)} y2={at.y(-r)} />
      ))}
    </>
  );
}

function Chosen({ revision, at, transform }: Props & { readonly transform: string }) {
  const chosen = useDrawing((state) => state.chosen);
  const extent = chosen && extentOf(revision, chosen);
  if (!extent) return null;
  const { from, to, fromMm, toMm } = extent;
  if (to - from < 1e-6) {
    return (
      <line className="drawn-chosen" x1={at.x(from)} x2={at.x(from)} y1={at.y(fromMm / 2)} y2={at.y(-fromMm / 2)} />
    );
  }
  return <path className="drawn-chosen" transform={transform} d={chosenPath(from, to, fromMm, toMm)} />;
}

/** The mark and the pointer's position in any linked view. Only these are drawn anew while the pointer moves. */
export function LinkedPositions({ at, size }: { readonly at: ToPixels; readonly size: BoxSize }) {
  const mark = useView((state) => state.mark?.z ?? null);
  const hover = useView((state) => state.hoverZ);
  const line = (z: number, name: string) => (
    <line className={`draw-${name}`} x1={at.x(1000 * z)} x2={at.x(1000 * z)} y1={0} y2={size.height} />
  );
  return (
    <>
      {hover !== null && line(hover, 'hover')}
      {mark !== null && line(mark, 'mark')}
    </>
  );
}

/** All of it but the linked positions. */
export function Underlay({ revision, at, transform }: Props & { readonly transform: string }) {
  return (
    <>
      <Chosen {...{ revision, at, transform }} />
      <Zones {...{ revision, at }} />
      <Guides {...{ revision, at }} />
    </>
  );
}
