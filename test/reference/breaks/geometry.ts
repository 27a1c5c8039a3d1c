/** Breaks that the checks of the geometry must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const geometryBreaks: readonly Break[] = [
  {
    check: 'geometry.squarePitch',
    file: 'core/geometry/crossSection.ts',
    from: 'Math.atan(lead / (2 * Math.PI * r))',
    to: 'Math.atan(lead / (Math.PI * r))',
  },
  {
    check: 'geometry.helixOf110mmScrew',
    file: 'core/geometry/crossSection.ts',
    from: 'Math.atan(lead / (2 * Math.PI * r))',
    to: 'Math.asin(lead / (2 * Math.PI * r))',
  },
  {
    check: 'geometry.solidSection',
    file: 'core/geometry/flightProfile.ts',
    from: 'fillet ** 3 * lever',
    to: 'fillet ** 2 * lever',
  },
  {
    check: 'geometry.freeSectionOfTwoStarts',
    file: 'core/geometry/flightProfile.ts',
    from: '* (R + 2 * r)) / 3',
    to: '* (R + r)) / 3',
  },
  {
    check: 'geometry.wettedSurface',
    file: 'core/geometry/crossSection.ts',
    from: 'fillet * Math.hypot(Math.cos(phi), k * r)',
    to: 'fillet * Math.hypot(Math.sin(phi), k * r)',
  },
  {
    check: 'geometry.taperedVolume',
    file: 'core/geometry/profile.ts',
    from: 'return (from + ((to - from) * u) / length) / 2;',
    to: 'return (from + ((to - from) * u ** 2) / length ** 2) / 2;',
  },
  {
    check: 'geometry.compression',
    file: 'core/geometry/summary.ts',
    from: 'compressionRatio: feed / end',
    to: 'compressionRatio: Math.sqrt(feed / end)',
  },
  {
    check: 'geometry.turnsOfGrowingLead',
    file: 'core/geometry/profile.ts',
    from: 'Math.log1p((change * u) / (section.length * section.leadStart))',
    to: 'Math.log1p((change * u) / (section.length * section.leadEnd))',
  },
  {
    check: 'geometry.meshVolume',
    file: 'core/geometry/flightProfile.ts',
    from: 'halfLand * (R * R - r * r)',
    to: 'halfLand * (R * R - r * R)',
  },
  {
    check: 'geometry.meshSurface',
    file: 'core/geometry/meshMeasure.ts',
    from: 'out[2] = ux * vy - uy * vx;',
    to: 'out[2] = ux * vy + uy * vx;',
  },
  {
    check: 'geometry.frustum',
    file: 'core/geometry/revolved.ts',
    from: '(endRadius - startRadius) / (to - from)',
    to: '(endRadius - startRadius) / (2 * (to - from))',
  },
  {
    check: 'geometry.coneLength',
    file: 'core/geometry/cone.ts',
    from: '/ Math.tan(includedAngle / 2)',
    to: '/ Math.tan(includedAngle)',
  },
  {
    check: 'geometry.channelVolume',
    file: 'core/geometry/stations.ts',
    from: 'length * freeArea(shape, bore)',
    to: 'length * freeArea(shape, 1.01 * bore)',
  },
  {
    check: 'geometry.helicalLength',
    file: 'core/geometry/stations.ts',
    from: '(Math.PI * (rootRadius + bore)) / profile.lead',
    to: '(2 * Math.PI * (rootRadius + bore)) / profile.lead',
  },
];
