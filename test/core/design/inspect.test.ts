import { describe, expect, it } from 'vitest';
import { faultyFileIssues } from '../../../core/design/inspect.ts';
import type { Project } from '../../../core/project/schema.ts';
import { pathText } from '../../../core/result.ts';
import { changedDemo, revisionAt } from '../../helpers/projects.ts';

const faultsOf = (change: (project: Project) => void): readonly string[] =>
  faultyFileIssues(JSON.stringify(changedDemo(change))).map((i) => `${pathText(i.path)}: ${i.code}`);

describe('a file that cannot be opened', () => {
  it('tells the faults of its machines too', () => {
    const faults = faultsOf((p) => {
      p.process.screwSpeedRpm = -1;
      Object.assign(revisionAt(p, 1).screw.sections[2] as object, { rootDiameterEndMm: 14 });
      revisionAt(p, 2).barrel.outerDiameterMm = 13;
      Object.assign(p.materials[0]?.windowHighC as object, { value: 160, low: 160, high: 160 });
      Object.assign(p.print, { travelShare: 0.6, idleShare: 0.6 });
    });
    expect(faults).toEqual([
      'process.screwSpeedRpm: out-of-range',
      'revisions[1].screw.sections[2].rootDiameterEndMm: root-too-thick',
      'revisions[2].barrel.outerDiameterMm: barrel-without-wall',
      'materials[0].windowLowC.value: values-out-of-order',
      'print.idleShare: shares-fill-time',
    ]);
  });

  it('is told once where two checks see the same', () => {
    const faults = faultsOf((p) => Object.assign(revisionAt(p, 2).barrel.zones[3] as object, { endMm: 170 }));
    expect(faults).toEqual(['revisions[2].barrel.zones[3].endMm: zone-outside']);
  });

  it('has no issues where it can be opened, whatever its revisions lack', () => {
    expect(faultsOf((p) => (revisionAt(p, 0).barrel.outerDiameterMm = 13))).toEqual([]);
    expect(faultyFileIssues('{')[0]?.code).toBe('bad-json');
  });
});
