/** Findings about walls too thin to be cut true: barrel, neck of the heat break, nozzle; each is told. */

import type { Design } from '../design/types.ts';
import { neckOf } from '../geometry/barrelWall.ts';
import { placeSegments } from '../geometry/bore.ts';
import { type FindingRule, type Found, found } from './context.ts';
import { lengthText } from './words.ts';

/** Thinnest walls that bore true without springing, m; common practice, about 1 mm on small nozzles and 2 mm on barrels. */
export const leastWall = { barrel: 2e-3, nozzle: 1e-3 } as const;

/** Lengths that differ by less are one, m. */
const same = 1e-9;

/** A wall that may be too thin to be cut true, m. */
interface Wall {
  readonly name: string;
  readonly wall: number;
  readonly limit: number;
  readonly z: number;
  readonly change: string;
}

const springs =
  'A thin wall springs under the chuck and the tool: the bore comes out of round, and threads or clamps dent it. Strength under pressure is judged apart.';
const softJaws = 'Take a larger outer diameter, or bore it before the outside is finished and hold it in soft jaws.';

const barrelWall = ({ barrel }: Design): Wall => ({
  name: 'wall of the barrel',
  wall: (barrel.outerDiameter - barrel.boreDiameter) / 2,
  limit: leastWall.barrel,
  z: barrel.length / 2,
  change: softJaws,
});

function neckWall({ barrel }: Design): Wall | null {
  const neck = neckOf(barrel);
  return (
    neck && {
      name: 'wall of the heat break',
      wall: neck.radius - barrel.boreDiameter / 2,
      limit: leastWall.barrel,
      z: (neck.start + neck.end) / 2,
      change:
        'Turn the neck last, on a close-fitting mandrel in the finished bore, or make its wall thicker; a thicker one conducts more heat to the feed.',
    }
  );
}

function nozzleWall(design: Design): Wall {
  const pieces = placeSegments(design).filter(({ start, end }) => end > start);
  const widest = pieces.reduce((most, { startRadius, endRadius }) => Math.max(most, startRadius, endRadius), 0);
  return {
    name: 'wall of the nozzle',
    wall: design.nozzle.outerDiameter / 2 - widest,
    limit: leastWall.nozzle,
    z: design.barrel.length,
    change: softJaws,
  };
}

function thinWall(thin: Wall | null): Found | null {
  if (!thin || thin.wall >= thin.limit - same) return null;
  return found({
    severity: 'note',
    where: thin.name,
    z: thin.z,
    saw: `The ${thin.name} is ${lengthText(thin.wall)} at its thinnest; ${lengthText(thin.limit)} bore true with common tools.`,
    why: springs,
    change: thin.change,
    value: thin.wall,
    limit: thin.limit,
    unit: 'm',
  });
}

/** Rules of walls. */
export const wallRules: readonly FindingRule[] = [
  {
    code: 'wall-thin-to-bore',
    about: 'wall of the barrel against what bores true',
    check: ({ design }) => thinWall(barrelWall(design)),
  },
  {
    code: 'neck-thin-to-turn',
    about: 'wall of the heat break’s neck against what bores and turns true',
    check: ({ design }) => thinWall(neckWall(design)),
  },
  {
    code: 'nozzle-thin-to-bore',
    about: 'thinnest wall of the nozzle against what bores true',
    check: ({ design }) => thinWall(nozzleWall(design)),
  },
];
