/** What the dimensions are drawn on: cuts through screw, barrel, nozzle, hopper and laid line. Forms, not to scale. */

import type { ReactNode } from 'react';

const Axis = ({ y }: { readonly y: number }) => <path className="sketch-axis" d={`M1 ${y}H131`} />;

/** A screw with three turns of its flight between two walls; the core grows from left to right. */
function Screw() {
  const turns = [20, 62, 104];
  return (
    <>
      <path className="sketch-wall" d="M2 2H130V8H2ZM2 64H130V70H2Z" />
      <path className="sketch-part" d="M4 24L128 16V56L4 48Z" />
      {turns.map((x) => (
        <path key={x} className="sketch-turn" d={`M${x} 10.5H${x + 6}L${x + 27} 61.5H${x + 21}Z`} />
      ))}
      <Axis y={36} />
    </>
  );
}

/** Two flights and the channel between them, from the wall to the axis. */
const Flight = () => (
  <>
    <path className="sketch-wall" d="M2 8H130V15H2Z" />
    <path
      className="sketch-part"
      d="M4 68V52H16Q23 52 24 45L28 19H40L44 45Q45 52 52 52H86Q93 52 94 45L98 19H110L114 45Q115 52 122 52H128V68Z"
    />
    <Axis y={68} />
  </>
);

/** End of the screw with cone and pin before the nozzle's entry. */
const Tip = () => (
  <>
    <path className="sketch-wall" d="M2 2H130V28L92 8H2ZM2 70H130V44L92 64H2Z" />
    <path className="sketch-part" d="M2 17H46L78 30H100V42H78L46 55H2Z" />
    <Axis y={36} />
  </>
);

/** Driven end and the first turns. */
const Shank = () => (
  <>
    <path className="sketch-part" d="M4 26H46Q52 26 52 18H128V54H52Q52 46 46 46H4Z" />
    <path className="sketch-turn" d="M64 8H70L84 64H78ZM98 8H104L118 64H112Z" />
    <Axis y={36} />
  </>
);

/** Barrel with opening, heat break and two heated stretches, nozzle at its end. */
const Barrel = () => (
  <>
    <path className="sketch-hint" d="M12 1L22 10V20H44V10L54 1" />
    <path className="sketch-wall" d="M8 10H22V20H8ZM44 10H54V15H64V10H112V20H44ZM8 52H112V62H64V57H54V62H8Z" />
    <path className="sketch-hint" d="M112 14L126 30V42L112 58" />
    <path className="sketch-heat" d="M70 5H88V9H70ZM92 5H110V9H92ZM70 63H88V67H70ZM92 63H110V67H92Z" />
    <Axis y={36} />
  </>
);

/** Barrel across the axis, open at the top. */
const Across = () => (
  <>
    <path className="sketch-wall" fillRule="evenodd" d="M66 6A31 31 0 1 0 66.1 6ZM66 19A18 18 0 1 1 65.9 19Z" />
    <path className="sketch-open" d="M56 3H76V24H56Z" />
    <circle className="sketch-part" cx="66" cy="37" r="10" />
  </>
);

/** Nozzle cut along its axis: entry, bore, cone, land. */
const Nozzle = () => (
  <>
    <path className="sketch-wall" d="M8 6H92L108 26V32H94L84 28H58L8 14ZM8 66H92L108 46V40H94L84 44H58L8 58Z" />
    <Axis y={36} />
  </>
);

/** Hopper over the barrel. */
const Hopper = () => (
  <>
    <path className="sketch-melt" d="M20 12H112L80 54H52Z" />
    <path className="sketch-outline" d="M14 4L52 54V62M118 4L80 54V62" />
    <path className="sketch-wall" d="M6 62H52V70H6ZM84 62H126V70H84Z" />
  </>
);

const bead = (x: number, y: number) => `M${x + 7} ${y}H${x + 35}a7 7 0 0 1 0 14H${x + 7}a7 7 0 0 1 0-14Z`;

/** A laid line across its direction, one beneath it, and the nozzle above. */
const Line = () => (
  <>
    <path className="sketch-wall" d="M52 2H80L74 26H58Z" />
    <path className="sketch-melt" d={bead(45, 30) + bead(45, 44)} />
    <path className="sketch-outline" d="M8 58H124" />
  </>
);

/** Lines side by side that make a wall. */
const Wall = () => (
  <>
    <path className="sketch-melt" d={[16, 30, 44].map((y) => bead(24, y) + bead(66, y)).join('')} />
    <path className="sketch-outline" d="M8 58H124" />
  </>
);

/** The nozzle over the bed while it travels. */
const Travel = () => (
  <>
    <path className="sketch-wall" d="M50 2H82L74 26H58Z" />
    <path className="sketch-outline" d="M8 62H124" />
  </>
);

/** Strand of filament. */
const Filament = () => <path className="sketch-melt" d="M8 24H124V48H8Z" />;

/** Grains of three sizes. */
const Grains = () => (
  <>
    <ellipse className="sketch-melt" cx="24" cy="50" rx="9" ry="7" />
    <ellipse className="sketch-melt" cx="58" cy="44" rx="16" ry="13" />
    <ellipse className="sketch-melt" cx="102" cy="38" rx="23" ry="19" />
  </>
);

/** Names of what is drawn on. */
export type BaseName =
  | 'screw'
  | 'flight'
  | 'tip'
  | 'shank'
  | 'barrel'
  | 'across'
  | 'nozzle'
  | 'hopper'
  | 'line'
  | 'wall'
  | 'travel'
  | 'filament'
  | 'grains';

/** The drawings by name. */
export const bases: Readonly<Record<BaseName, () => ReactNode>> = {
  screw: Screw,
  flight: Flight,
  tip: Tip,
  shank: Shank,
  barrel: Barrel,
  across: Across,
  nozzle: Nozzle,
  hopper: Hopper,
  line: Line,
  wall: Wall,
  travel: Travel,
  filament: Filament,
  grains: Grains,
};
