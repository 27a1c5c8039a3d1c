/** Screws of textbooks as the plug of the feed sees them. */

import { type PlugConveying, type PlugShape, plugConveying } from '../feed/plug.ts';

/** A screw with a square-cut channel; `flight` is its width across, the same at every radius. m. */
interface PlugScrew {
  readonly diameter: number;
  readonly depth: number;
  readonly lead: number;
  readonly flight: number;
}

/** 63.5 mm screw of a textbook (from memory: Z. Tadmor & C. G. Gogos, LDPE example). */
export const textbookPlug: PlugScrew = { diameter: 0.0635, depth: 0.009398, lead: 0.0635, flight: 0.00635 };
/** A small screw of round numbers. */
export const smallPlug: PlugScrew = { diameter: 0.016, depth: 0.003, lead: 0.016, flight: 0.0016 };

/** Channel widths normal to the flight at barrel, mid-depth and root. */
function plugOf({ diameter, depth, lead, flight }: PlugScrew): PlugShape {
  const width = (radius: number) => lead * Math.cos(Math.atan(lead / (2 * Math.PI * radius))) - flight;
  const barrelRadius = diameter / 2;
  return {
    barrelRadius,
    depth,
    lead,
    starts: 1,
    widthBarrel: width(barrelRadius),
    widthMean: width(barrelRadius - depth / 2),
    widthRoot: width(barrelRadius - depth),
  };
}

/**
 * Conveying of such a screw.
 * @param gain pressure at the end over that at the start
 * @param turns over which it is built up
 */
export function conveyed(screw: PlugScrew, onBarrel: number, onScrew: number, gain = 1, turns = 1): PlugConveying {
  const helixMean = Math.atan(screw.lead / (Math.PI * (screw.diameter - screw.depth)));
  const alongChannel = (turns * screw.lead) / Math.sin(helixMean);
  return plugConveying(plugOf(screw), onBarrel, onScrew, (screw.depth / alongChannel) * Math.log(gain));
}
