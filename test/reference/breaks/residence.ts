/** Breaks that the checks of this stage must notice. */

import type { Break } from './types.ts';

/** One a check. */
export const residenceBreaks: readonly Break[] = [
  {
    check: 'residence.firstMeltOfChannel',
    file: 'core/residence/channel.ts',
    from: 'shortest: 0.75 * mean',
    to: 'shortest: 0.7 * mean',
  },
  {
    check: 'residence.halfTimeOfChannel',
    file: 'core/residence/pintoTadmor.ts',
    from: 'return (1 - xi + Math.sqrt((1 - xi) * (1 + 3 * xi))) / 2;',
    to: 'return (1 - xi + Math.sqrt((1 - xi) * (1 + 3 * xi))) / 3;',
  },
  {
    check: 'residence.leftByMeanOfChannel',
    file: 'core/residence/pintoTadmor.ts',
    from: 'return (3 * xi * xi - 1 + (xi - 1) * root) / 2;',
    to: 'return (3 * xi * xi - 1 + 2 * (xi - 1) * root) / 2;',
  },
  {
    check: 'residence.oldTailOfChannel',
    file: 'core/residence/pintoTadmor.ts',
    from: 'return 1 - (xi - pairedHeight(xi));',
    to: 'return 1 - xi;',
  },
  {
    check: 'residence.leftByMeanOfPipe',
    file: 'core/residence/channel.ts',
    from: 'const power = (index + 1) / index;',
    to: 'const power = 1 / index;',
  },
  {
    check: 'residence.oldTailOfPipe',
    file: 'core/residence/channel.ts',
    from: '1 - radius(cut) ** 2',
    to: '1 - radius(cut)',
  },
  {
    check: 'residence.firstMeltOfPipe',
    file: 'core/flow/pipe.ts',
    from: '(index + 1) / (3 * index + 1)',
    to: '(index + 1) / (2 * index + 1)',
  },
  {
    check: 'residence.meanOfParts',
    file: 'core/residence/combine.ts',
    from: 'mean += t * share;',
    to: 'mean += time[i] * share;',
  },
  {
    check: 'residence.solvedPipe',
    file: 'core/flow/tip/ageField.ts',
    from: 'work.source(point.z, point.r) : 1;',
    to: 'work.source(point.z, point.r) : point.r;',
  },
  {
    check: 'residence.firstMeltOfDeepChannel',
    file: 'core/flow/field/orbitGrid.ts',
    from: 'grid.along[k] = onWall && y < 1 ? 0 : sum(w, at) * scales.speed;',
    to: 'grid.along[k] = onWall && y < 1 ? 0 : (sum(w, at) + 1) * scales.speed;',
  },
  {
    check: 'residence.firstMeltAgainstPressure',
    file: 'core/flow/field/prepared.ts',
    from: 'loadPerGradient: (length * length) /',
    to: 'loadPerGradient: (2 * length * length) /',
  },
  {
    check: 'residence.leftByHalfAgain',
    file: 'core/residence/orbitTimes.ts',
    from: 'running += flow[k] / total;',
    to: 'running += volume[k];',
  },
  {
    check: 'residence.oldMeltOfDeepChannel',
    file: 'core/residence/orbits.ts',
    from: 'value / flow[k]));',
    to: 'value * flow[k]));',
  },
  {
    check: 'residence.leftByMeanThinning',
    file: 'core/residence/orbitTimes.ts',
    from: 'forward.sort((p, q) => dwell[p] - dwell[q]);',
    to: 'forward.sort((p, q) => dwell[q] - dwell[p]);',
  },
  {
    check: 'residence.oldMeltThinning',
    file: 'core/residence/orbitTimes.ts',
    from: '|| orbits.dwell[k] > multiple) sum += orbits.volume[k];',
    to: '|| orbits.dwell[k] > multiple) sum += orbits.flow[k];',
  },
  {
    check: 'residence.centreOfShallowChannel',
    file: 'core/residence/orbits.ts',
    from: 'const wholeVolume = total(sums.second);',
    to: 'const wholeVolume = total(sums.second) / 2;',
  },
  {
    check: 'residence.slowMeltOfParts',
    file: 'core/residence/combine.ts',
    from: 'share[at] = part * second.share[j];',
    to: 'share[at] = part / second.share.length;',
  },
  {
    check: 'residence.trackedFirstOpen',
    file: 'core/residence/orbits.ts',
    from: 'value / flow[k]));',
    to: 'value * flow[k]));',
  },
  {
    check: 'residence.trackedMeanOpen',
    file: 'core/flow/field/prepared.ts',
    from: 'flow: 2 * starts * speed',
    to: 'flow: starts * speed',
  },
  {
    check: 'residence.trackedByMeanOpen',
    file: 'core/residence/orbitTimes.ts',
    from: 'running += flow[k] / total;',
    to: 'running += volume[k];',
  },
  {
    check: 'residence.trackedByDoubleOpen',
    file: 'core/residence/orbitTimes.ts',
    from: 'const before = low > 0 ? cumulative[low - 1] : 0;',
    to: 'const before = 0;',
  },
  {
    check: 'residence.trackedFirstPressed',
    file: 'core/residence/orbits.ts',
    from: 'const wholeVolume = total(sums.second);',
    to: 'const wholeVolume = total(sums.second) / 2;',
  },
  {
    check: 'residence.trackedMeanPressed',
    file: 'core/flow/field/prepared.ts',
    from: 'flow: 2 * starts * speed',
    to: 'flow: starts * speed',
  },
  {
    check: 'residence.trackedByMeanPressed',
    file: 'core/residence/orbitTimes.ts',
    from: 'forward.sort((p, q) => dwell[p] - dwell[q]);',
    to: 'forward.sort((p, q) => dwell[q] - dwell[p]);',
  },
  {
    check: 'residence.trackedByDoublePressed',
    file: 'core/flow/field/orbitGrid.ts',
    from: 'sum(w, at) * scales.speed;',
    to: '(sum(w, at) + 1) * scales.speed;',
  },
  {
    check: 'residence.trackedSteepPressed',
    file: 'core/residence/orbitTimes.ts',
    from: 'running += flow[k] / total;',
    to: 'running += volume[k];',
  },
  {
    check: 'residence.trackedFirstHelix',
    file: 'core/flow/field/orbitGrid.ts',
    from: 'grid.density[k] = helical ? (shape.rootRadius + y) * scales.length : 1;',
    to: 'grid.density[k] = 1;',
  },
  {
    check: 'residence.trackedMeanHelix',
    file: 'core/flow/field/prepared.ts',
    from: 'flow: 2 * starts * speed',
    to: 'flow: starts * speed',
  },
  {
    check: 'residence.trackedByMeanHelix',
    file: 'core/residence/orbitTimes.ts',
    from: 'running += flow[k] / total;',
    to: 'running += volume[k];',
  },
  {
    check: 'residence.trackedByHalfAgainHelix',
    file: 'core/flow/field/orbitGrid.ts',
    from: 'sum(w, at) * scales.speed;',
    to: '(sum(w, at) + 1) * scales.speed;',
  },
];
