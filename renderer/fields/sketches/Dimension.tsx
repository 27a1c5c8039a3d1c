/** The highlighted dimension of a sketch: arrows between two points, an arc between two directions, a ring. */

/** Where a dimension stands in the sketch's own units, 132 wide and 72 high; angles in degrees, clockwise from right. */
export type DimensionShape =
  | { readonly kind: 'span'; readonly from: Point; readonly to: Point; readonly reach?: number }
  | { readonly kind: 'arc'; readonly at: Point; readonly radius: number; readonly start: number; readonly end: number }
  | { readonly kind: 'ring'; readonly at: Point; readonly radius: number };

/** A place in the sketch. */
export type Point = readonly [x: number, y: number];

const head = 4.5;

/** An arrow's head at `tip`, pointing along the unit vector. */
function Head({ tip, along }: { readonly tip: Point; readonly along: Point }) {
  const [x, y] = tip;
  const [dx, dy] = along;
  const back = (side: number) => `${x - head * dx - side * 0.4 * head * dy} ${y - head * dy + side * 0.4 * head * dx}`;
  return <path className="sketch-head" d={`M${x} ${y}L${back(1)}L${back(-1)}Z`} />;
}

/** Two arrows, with extension lines of length `reach` across them; outside where the span is short. */
function Span({ from, to, reach = 4 }: Extract<DimensionShape, { kind: 'span' }>) {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const outside = length < 2.5 * head;
  const way = outside ? -1 : 1;
  const out = outside ? 2.2 * head : 0;
  const across = ([x, y]: Point) =>
    `M${x - reach * along[1]} ${y + reach * along[0]}L${x + reach * along[1]} ${y - reach * along[0]}`;
  return (
    <>
      <path className="sketch-fine" d={across(from) + across(to)} />
      <path
        className="sketch-dim"
        d={`M${from[0] - out * along[0]} ${from[1] - out * along[1]}L${to[0] + out * along[0]} ${to[1] + out * along[1]}`}
      />
      <Head tip={from} along={[-way * along[0], -way * along[1]]} />
      <Head tip={to} along={[way * along[0], way * along[1]]} />
    </>
  );
}

const onCircle = ([x, y]: Point, radius: number, degrees: number): Point => [
  x + radius * Math.cos((degrees * Math.PI) / 180),
  y + radius * Math.sin((degrees * Math.PI) / 180),
];

/** Two legs and the arc between them. */
function Arc({ at, radius, start, end }: Extract<DimensionShape, { kind: 'arc' }>) {
  const legs = [start, end].map((degrees) => `M${at.join(' ')}L${onCircle(at, radius + 6, degrees).join(' ')}`);
  const [a, b] = [onCircle(at, radius, start), onCircle(at, radius, end)];
  return (
    <>
      <path className="sketch-fine" d={legs.join('')} />
      <path className="sketch-dim" d={`M${a.join(' ')}A${radius} ${radius} 0 0 1 ${b.join(' ')}`} />
    </>
  );
}

/** The dimension. */
export function Dimension({ shape }: { readonly shape: DimensionShape }) {
  if (shape.kind === 'span') return <Span {...shape} />;
  if (shape.kind === 'arc') return <Arc {...shape} />;
  return <circle className="sketch-dim" cx={shape.at[0]} cy={shape.at[1]} r={shape.radius} />;
}
