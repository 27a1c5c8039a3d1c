/** Which faults only follow from another: a limit that is itself wrong makes nonsense of what is measured by it. */

import type { Issue } from '../result.ts';

type Path = readonly (string | number)[];

const up = (path: Path, levels: number): Path => path.slice(0, path.length - levels);

/** By code: the places whose own faults make such an issue a consequence. */
const dependsOn: Readonly<Record<string, (path: Path) => readonly Path[]>> = {
  'range-order': (path) => [up(path, 1)],
  'extent-order': (path) => [up(path, 2)],
  'zone-backwards': (path) => [up(path, 1)],
  'zone-outside': (path) => [up(path, 1), [...up(path, 3), 'lengthMm']],
  'zones-overlap': (path) => [up(path, 2)],
};

const within = (place: Path, path: Path): boolean => place.every((part, i) => path[i] === part);

/**
 * Issues between fields, without those that rest on a field with a fault of its own.
 * @param issues issues between fields
 * @param faults issues of single fields, paths from the same root
 */
export function withoutConsequences(issues: readonly Issue[], faults: readonly Issue[]): readonly Issue[] {
  return issues.filter(({ code, path }) => {
    const places = dependsOn[code]?.(path) ?? [];
    return !faults.some((fault) => places.some((place) => within(place, fault.path)));
  });
}
