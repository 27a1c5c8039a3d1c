/** A drawing as plain data: sheets of entities in paper millimetres, from which every writer makes its own format. */

/** A point on the sheet, mm from its lower left corner (in a block: from the block's own origin). */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** An upright rectangle, mm. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** What a line means; its width and dashes follow from that, see `layers`. */
export type LayerName = 'FRAME' | 'OUTLINE' | 'THIN' | 'CENTRE' | 'CUT' | 'HATCH' | 'DIMENSION' | 'TEXT';

/** Straight pieces through points. */
export interface PathEntity {
  readonly kind: 'path';
  readonly layer: LayerName;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** A full circle. */
export interface CircleEntity {
  readonly kind: 'circle';
  readonly layer: LayerName;
  readonly centre: Point;
  /** mm */
  readonly radius: number;
}

/** A piece of a circle, counter-clockwise. */
export interface ArcEntity {
  readonly kind: 'arc';
  readonly layer: LayerName;
  readonly centre: Point;
  /** mm */
  readonly radius: number;
  /** degrees from the x axis, `to` above `from` */
  readonly from: number;
  readonly to: number;
}

/** A filled shape: arrow heads and dots. */
export interface FillEntity {
  readonly kind: 'fill';
  readonly layer: LayerName;
  readonly points: readonly Point[];
}

/** Section lining inside closed outlines, by the even-odd rule. */
export interface HatchEntity {
  readonly kind: 'hatch';
  readonly layer: 'HATCH';
  readonly loops: readonly (readonly Point[])[];
  /** distance of the lines, mm; they rise at 45° */
  readonly spacing: number;
}

/** A line of lettering. */
export interface TextEntity {
  readonly kind: 'text';
  readonly layer: LayerName;
  readonly text: string;
  /** start of the base line */
  readonly at: Point;
  /** of a capital, mm */
  readonly height: number;
  /** degrees: 90 reads from the right */
  readonly turn: 0 | 90;
  /** along the base line, mm */
  readonly width: number;
  readonly box: Box;
}

/** A dimension: what it measures on the part, what is written, and how it is drawn. */
export interface DimensionEntity {
  readonly kind: 'dimension';
  readonly layer: 'DIMENSION';
  readonly form: 'linear' | 'angular' | 'radius';
  /** of the part: mm, or degrees where angular */
  readonly value: number;
  /** sign before the value */
  readonly prefix: '' | '⌀' | 'R' | 'SR';
  /** limits from the nominal value, mm; null = the sheet's general tolerance */
  readonly limits: { readonly upper: number; readonly lower: number } | null;
  /** paper mm per mm of the part; null where the view is broken and paper does not measure it */
  readonly scale: number | null;
  /** ends of what is measured; for an angle points on its legs, for a radius its centre and a point on the arc */
  readonly first: Point;
  readonly second: Point;
  /** vertex of an angle */
  readonly vertex: Point | null;
  /** a point on the dimension line */
  readonly place: Point;
  /** direction of a linear measure */
  readonly along: 'x' | 'y';
  readonly label: TextEntity;
  readonly strokes: readonly (PathEntity | ArcEntity | FillEntity)[];
}

/** Whatever stands on a sheet. */
export type Entity = PathEntity | CircleEntity | ArcEntity | FillEntity | HatchEntity | TextEntity | DimensionEntity;

/** A view, table or note before it has its place. */
export interface Block {
  readonly name: string;
  readonly entities: readonly Entity[];
  readonly box: Box;
  /** may stand beside the title block */
  readonly aside: boolean;
}

/** One sheet. */
export interface Sheet {
  readonly name: string;
  readonly title: string;
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly frame: Box;
  /** of the main view, e.g. 1:2 */
  readonly scaleText: string;
  readonly views: readonly { readonly name: string; readonly box: Box }[];
  readonly entities: readonly Entity[];
}

/** All sheets of one hand-over. */
export interface Drawing {
  readonly title: string;
  /** the title block's language, ISO 639 */
  readonly language: string;
  /** YYYY-MM-DD */
  readonly date: string;
  readonly creator: string;
  readonly description: string;
  readonly sheets: readonly Sheet[];
  /** what the sheets warn of */
  readonly cautions: readonly string[];
  readonly facts: readonly { readonly label: string; readonly text: string }[];
}
