import { describe, expect, test } from 'vitest';
import { checkProject, type Project, type SectionInput } from '../../../core/index.ts';
import { setSectionKind, splitSection } from '../../../renderer/store/edits.ts';
import {
  joinEnds,
  mergeFault,
  mergeSections,
  moveSectionTo,
  nameSection,
  openJoints,
  splitSectionAt,
} from '../../../renderer/store/sectionEdits.ts';
import { loadExample } from '../../helpers/projects.ts';

const demo = loadExample('demo');
const sectionsOf = (project: Project): SectionInput[] =>
  project.revisions.find(({ id }) => id === 'C')?.screw.sections ?? [];
const [feed, compression, metering] = sectionsOf(demo);
const flighted = (section: SectionInput | undefined) => {
  if (section?.kind !== 'flighted') throw new Error('a flighted section');
  return section;
};

describe('splitting', () => {
  test('at a place keeps length and ends, and takes root and lead off the slope', () => {
    const leaning = structuredClone(demo);
    const whole = flighted(sectionsOf(leaning)[1]);
    whole.leadEndMm = 18;
    const [, first, second] = sectionsOf(splitSectionAt('C', 1, 11)(leaning)).map(flighted);
    expect([first?.lengthMm, second?.lengthMm]).toEqual([11, 44]);
    // a fifth of the way from 6.4 to 10.4 and from 14 to 18
    expect([first?.rootDiameterEndMm, second?.rootDiameterStartMm]).toEqual([7.2, 7.2]);
    expect([first?.leadEndMm, second?.leadStartMm]).toEqual([14.8, 14.8]);
    expect([first?.rootDiameterStartMm, second?.rootDiameterEndMm]).toEqual([6.4, 10.4]);
  });

  test('in halves, and not where a part would be too short to store', () => {
    const [, first, second] = sectionsOf(splitSection('C', 1)(demo));
    expect([first?.lengthMm, second?.lengthMm]).toEqual([27.5, 27.5]);
    expect(splitSectionAt('C', 1, 0.4)(demo)).toBe(demo);
    expect(splitSectionAt('C', 1, 54.6)(demo)).toBe(demo);
  });
});

describe('merging', () => {
  test('undoes a split', () => {
    const split = splitSectionAt('C', 1, 13.7)(demo);
    expect(sectionsOf(mergeSections('C', 1)(split))).toEqual(sectionsOf(demo));
  });

  test('adds lengths, keeps the first start and the second end', () => {
    const [merged, rest] = sectionsOf(mergeSections('C', 0)(demo));
    expect(merged).toMatchObject({
      name: feed?.name,
      lengthMm: 110,
      rootDiameterStartMm: 6.4,
      rootDiameterEndMm: 10.4,
    });
    expect(rest).toEqual(metering);
  });

  test('says why it cannot, and then changes nothing', () => {
    const plain = setSectionKind('C', 1, 'plain')(demo);
    const double = structuredClone(demo);
    flighted(sectionsOf(double)[1]).starts = 2;
    const long = structuredClone(demo);
    flighted(sectionsOf(long)[1]).lengthMm = 1990;
    const faults = [demo, plain, double, long].map((project) => mergeFault(sectionsOf(project), 0));
    expect(faults).toEqual([null, 'kind', 'starts', 'long']);
    expect(mergeFault(sectionsOf(demo), 2)).toBe('last');
    expect(mergeSections('C', 0)(plain)).toBe(plain);
    expect(mergeSections('C', 2)(demo)).toBe(demo);
  });
});

describe('joining ends', () => {
  test('lets each section begin as the one before ends, also over a plain stretch', () => {
    const open = structuredClone(setSectionKind('C', 1, 'plain')(demo));
    const sections = sectionsOf(open);
    flighted(sections[0]).leadEndMm = 16;
    flighted(sections[2]).rootDiameterStartMm = 9;
    expect(openJoints(sections)).toBe(1);
    const joined = joinEnds('C')(open);
    expect(openJoints(sectionsOf(joined))).toBe(0);
    expect(flighted(sectionsOf(joined)[2])).toMatchObject({ rootDiameterStartMm: 10.4, leadStartMm: 16 });
    expect(joinEnds('C')(joined)).toBe(joined);
  });
});

test('a section moves to any place; one that stays or would fall off changes nothing', () => {
  expect(sectionsOf(moveSectionTo('C', 0, 2)(demo))).toEqual([compression, metering, feed]);
  expect(moveSectionTo('C', 1, 1)(demo)).toBe(demo);
  expect(moveSectionTo('C', 1, 3)(demo)).toBe(demo);
});

test('a name is given and taken away, and what comes out can be saved', () => {
  const named = nameSection('C', 0, '  intake ')(demo);
  expect(sectionsOf(named)[0]?.name).toBe('intake');
  expect('name' in (sectionsOf(nameSection('C', 0, ' ')(named))[0] ?? {})).toBe(false);
  for (const edit of [nameSection('C', 0, ''), mergeSections('C', 0), splitSectionAt('C', 2, 3.123)]) {
    expect(checkProject(edit(demo)).ok).toBe(true);
  }
});
