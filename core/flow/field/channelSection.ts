/** What the channel solver needs to know of a screw channel: its cross-section, and how the barrel moves over it. */

import type { Issue } from '../../result.ts';

/** Unwrapped straight channel: x across, y from root (0) to barrel (depth), z down-channel. The limit of a shallow screw. */
export interface FlatSection {
  readonly kind: 'flat';
  /** H, root to barrel, m */
  readonly depth: number;
  /** W, distance between the flights normal to them, at the barrel, m */
  readonly width: number;
  /** phi, angle between down-channel direction and barrel motion, rad; 0 to pi/2 */
  readonly helixAngle: number;
  /** Radius between flank and root, in the normal section, m, >= 0 */
  readonly rootFillet: number;
  /** Angle of a flank from the direction of depth, rad; 0 = square, larger = V, the channel narrowing to the root */
  readonly flankAngle: number;
}

/** Helical channel as turned: described by its axial (meridional) section; not unwrapped. */
export interface HelicalSection {
  readonly kind: 'helical';
  /** m; also the outer radius of the flights (no clearance) */
  readonly barrelRadius: number;
  /** m, > 0 */
  readonly rootRadius: number;
  /** Advance of one flight per turn, m */
  readonly lead: number;
  /** Number of flights, integer >= 1 */
  readonly starts: number;
  /** Axial width of a flight at the barrel, m */
  readonly flightAxialWidth: number;
  /** As in {@link FlatSection}, in the axial section, rad */
  readonly flankAngle: number;
  /** Radius between flank and root, in the axial section, m, >= 0 */
  readonly rootFillet: number;
}

/** Cross-section of one channel, SI. */
export type ChannelSection = FlatSection | HelicalSection;

/** Motion seen from the screw: screw at rest, barrel surface sliding. */
export interface ChannelMotion {
  /** Speed of the barrel surface, pi D N, m/s, > 0; in a helical channel purely circumferential */
  readonly barrelSpeed: number;
}

/** Depth of a section, root to barrel, m. */
export function sectionDepth(section: ChannelSection): number {
  return section.kind === 'flat' ? section.depth : section.barrelRadius - section.rootRadius;
}

/** Width of a section at the barrel, m: normal to the flights (flat) or along the axis (helical). */
export function sectionWidth(section: ChannelSection): number {
  return section.kind === 'flat' ? section.width : section.lead / section.starts - section.flightAxialWidth;
}

/** Width between the flanks' straight lines prolonged to the root, m; as {@link sectionWidth}. */
export function sectionRootWidth(section: ChannelSection): number {
  return sectionWidth(section) - 2 * sectionDepth(section) * Math.tan(section.flankAngle);
}

/** Largest root fillet that fits: the arcs may meet at mid-channel and reach the barrel, m. */
export function largestRootFillet(section: ChannelSection): number {
  const { flankAngle } = section;
  const opening = 1 - Math.sin(flankAngle);
  const acrossLimit = (sectionRootWidth(section) / 2) * (Math.cos(flankAngle) / opening);
  return Math.min(acrossLimit, sectionDepth(section) / opening);
}

/** Every reason why a section cannot be solved; empty when it can. */
export function channelSectionIssues(section: ChannelSection): Issue[] {
  const issues: Issue[] = [];
  const require = (good: boolean, path: string, value: number, allowed: string, remedy: string) => {
    if (good) return;
    const message = 'This channel cross-section cannot exist.';
    issues.push({ path: [path], code: `section-${path}`, message, value: String(value), allowed, remedy });
  };
  const depth = sectionDepth(section);
  const root = sectionRootWidth(section);
  require(depth > 0, 'depth', depth, 'above 0 m', 'Make the root smaller than the barrel.');
  require(root > 0, 'width', root, 'root width above 0 m', 'Widen the channel or lessen the flank angle.');
  const angle = section.flankAngle;
  require(angle >= 0 && angle < 1.4, 'flankAngle', angle, '0 to 1.4 rad', 'Give the flank angle from the radial line.');
  const fillet = section.rootFillet;
  const limit = largestRootFillet(section) * (1 + 1e-9);
  require(fillet >= 0 && fillet <= limit, 'rootFillet', fillet, `0 to ${limit} m`, 'Choose a smaller root fillet.');
  if (section.kind === 'helical') {
    const radius = section.rootRadius;
    require(radius > 0, 'rootRadius', radius, 'above 0 m', 'Give the screw a core.');
    const starts = section.starts;
    require(Number.isInteger(starts) && starts >= 1, 'starts', starts, 'integer from 1', 'Give whole flights.');
  }
  return issues;
}
