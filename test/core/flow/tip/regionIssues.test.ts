import { describe, expect, it } from 'vitest';
import type { TipRegion } from '../../../../core/flow/tip/region.ts';
import { regionIssues } from '../../../../core/flow/tip/regionIssues.ts';
import { solveTip } from '../../../../core/flow/tip/solveTip.ts';
import { DEG, head, newtonian, pipe } from './regions.ts';

const codes = (region: TipRegion): string[] => regionIssues(region).map((issue) => issue.code);
const sound = head({ kind: 'cone', includedAngle: 60 * DEG }, 120 * DEG);
const withOuter = (change: (outer: { z: number; r: number; fillet?: number }[]) => void): TipRegion => {
  const outer = sound.outer.map((point) => ({ ...point }));
  change(outer);
  return { ...sound, outer };
};

describe('a tip region is refused', () => {
  it('not when it is sound, even with a narrow gap', () => {
    expect(regionIssues(sound)).toEqual([]);
    expect(regionIssues(head({ kind: 'flat' }, Math.PI, 0.1e-3))).toEqual([]);
    expect(regionIssues(pipe(2e-3, 10e-3))).toEqual([]);
  });

  it('when the tip touches or pierces the nozzle, naming place and limit', () => {
    const [issue] = regionIssues(head({ kind: 'flat' }, Math.PI, 0));
    expect(issue).toMatchObject({ path: ['tip'], code: 'tip-touches-wall' });
    expect(codes(head({ kind: 'flat' }, Math.PI, 0.02e-3))).toEqual(['tip-touches-wall']);
    expect(regionIssues(head({ kind: 'flat' }, Math.PI, 0.02e-3))[0].message).toContain('4.000 mm after the inlet');
    expect(codes(head({ kind: 'flat' }, Math.PI, -0.5e-3))).toEqual(['tip-touches-wall']);
    expect(codes(head({ kind: 'flat' }, 60 * DEG, 20e-3, { pin: { radius: 0.2e-3, length: 60e-3 } }))).toEqual([]);
    expect(codes({ ...sound, tip: { kind: 'cone', includedAngle: 10 * DEG } })).toEqual(['tip-leaves-nozzle']);
  });

  it('when the screw fills the bore', () => {
    expect(codes({ ...sound, screwRadius: 7e-3, tip: { kind: 'flat' } })).toEqual(['tip-touches-wall']);
  });

  it('when the orifice is closed or nearly so', () => {
    const closed = (r: number): string[] =>
      codes(
        withOuter((outer) => {
          outer[2].r = r;
          outer[3].r = r;
        }),
      );
    expect(closed(0)).toEqual(['not-a-length', 'not-a-length']);
    expect(closed(1e-5)).toEqual(['orifice-closed']);
    expect(closed(Number.NaN)).toContain('not-a-length');
  });

  it('when the wall is no profile', () => {
    expect(
      codes(
        withOuter((outer) => {
          outer[2].z = 1e-3;
        }),
      ),
    ).toContain('profile-runs-back');
    expect(
      codes(
        withOuter((outer) => {
          outer[0].z = 1e-3;
        }),
      ),
    ).toContain('profile-start');
    expect(
      codes(
        withOuter((outer) => {
          outer[3] = { ...outer[2], r: 0.3e-3 };
        }),
      ),
    ).toContain('profile-end');
    expect(
      codes(
        withOuter((outer) => {
          outer.splice(2, 0, { ...outer[1] });
        }),
      ),
    ).toContain('corner-twice');
    expect(
      codes(
        withOuter((outer) => {
          outer.length = 1;
        }),
      ),
    ).toContain('no-wall');
    const flat = withOuter((outer) => {
      const { z } = outer[1];
      outer.splice(1, 0, { z: z / 2, r: 7e-3 }, { z: z / 2, r: 8e-3 }, { z: z / 2, r: 6.9e-3 });
    });
    expect(codes(flat)).toContain('ledge-without-width');
  });

  it('when a fillet does not fit, with the largest that would', () => {
    const [issue] = regionIssues(
      withOuter((outer) => {
        outer[1].fillet = 40e-3;
      }),
    );
    expect(issue).toMatchObject({ path: ['outer', 1, 'fillet'], code: 'fillet-too-large' });
    const most = Number(/up to ([\d.]+) mm/.exec(issue.allowed ?? '')?.[1]) * 1e-3;
    expect(
      codes(
        withOuter((outer) => {
          outer[1].fillet = 0.999 * most;
        }),
      ),
    ).toEqual([]);
    expect(
      codes(
        withOuter((outer) => {
          outer[1].fillet = 1.001 * most;
        }),
      ),
    ).toEqual(['fillet-too-large']);
  });

  it('when the tip itself is impossible', () => {
    expect(codes({ ...sound, tip: { kind: 'cone', includedAngle: 0 } })).toContain('cone-angle');
    expect(codes({ ...sound, pin: { radius: 5e-3, length: 1e-3 } })).toContain('pin-too-thick');
    expect(codes({ ...sound, pin: { radius: 1e-3, length: 0 } })).toContain('not-a-length');
    expect(codes({ ...sound, annulusLength: -1 })).toContain('not-a-length');
  });

  it('when nothing flows', () => {
    const result = solveTip(sound, newtonian, { volumeFlow: 0 });
    expect(result.ok ? [] : result.issues.map((issue) => issue.code)).toEqual(['no-flow']);
  });
});
