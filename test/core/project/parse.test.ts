import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestProjectText, parseMaterial, parseProject } from '../../../core/project/parse.ts';
import type { Project } from '../../../core/project/schema.ts';
import { serializeProject } from '../../../core/project/serialize.ts';
import { type Issue, pathText } from '../../../core/result.ts';
import { anyProject, pinned, strayValue } from '../../helpers/arbitraries.ts';
import { assetText } from '../../helpers/assets.ts';
import { changedDemo, codesOf, revisionAt } from '../../helpers/projects.ts';

const demoText = assetText('examples/demo.json');

const issuesOf = (text: string): readonly Issue[] => {
  const result = parseProject(text);
  return result.ok ? [] : result.issues;
};

/** The demo as plain data, to be damaged. */
const damaged = (change: (data: Record<string, unknown>) => void): string => {
  const data: Record<string, unknown> = JSON.parse(demoText);
  change(data);
  return JSON.stringify(data);
};

const brief = (issues: readonly Issue[]): readonly string[] => issues.map((i) => `${pathText(i.path)}: ${i.code}`);

describe('text that is JSON but not to be trusted', () => {
  it('is refused when too long, without being read', () => {
    expect(codesOf(parseProject(' '.repeat(longestProjectText + 1)))).toEqual(['too-large']);
  });

  it('is refused when nested too deep, however deep', () => {
    expect(codesOf(parseProject('['.repeat(100_000)))).toEqual(['too-deep']);
    expect(codesOf(parseProject(damaged((d) => (d.extra = JSON.parse(`${'['.repeat(63)}${']'.repeat(63)}`)))))).toEqual(
      [],
    );
    expect(codesOf(parseProject(damaged((d) => (d.extra = JSON.parse(`${'['.repeat(65)}${']'.repeat(65)}`)))))).toEqual(
      ['too-deep'],
    );
  });

  it.each(['"__proto__"', '"constructor"', '"prototype"', '"\\u005f_proto__"'])('may not carry the key %s', (key) => {
    expect(codesOf(parseProject(demoText.replace('{', `{ ${key}: { "polluted": true },`)))).toEqual(['forbidden-key']);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('may not carry a key twice', () => {
    expect(codesOf(parseProject(demoText.replace('{', '{ "name": "first",')))).toEqual(['duplicate-key']);
  });

  it('may begin with a byte order mark', () => {
    expect(codesOf(parseProject(`\uFEFF${demoText}`))).toEqual([]);
  });

  it('must say that it is a project, and of which version', () => {
    expect(codesOf(parseProject('[]'))).toEqual(['not-a-project']);
    expect(codesOf(parseProject('{}'))).toEqual(['not-a-project']);
    expect(codesOf(parseProject(damaged((d) => (d.format = 'else'))))).toEqual(['not-a-project']);
    for (const version of [undefined, null, '1', 1.5, -1]) {
      expect(codesOf(parseProject(damaged((d) => (d.version = version))))).toEqual(['bad-version']);
    }
  });

  it('is refused when a newer program wrote it, with that reason alone', () => {
    const [issue, ...more] = issuesOf(damaged((d) => Object.assign(d, { version: 2, revisions: 'something new' })));
    expect(more).toEqual([]);
    expect(issue).toMatchObject({ code: 'newer-version', path: ['version'], value: '2' });
  });
});

describe('faults of content', () => {
  it('come all at once, each with place, value, range and remedy', () => {
    const text = JSON.stringify(
      changedDemo((p) => {
        revisionAt(p, 0).barrel.boreDiameterMm = 2;
        revisionAt(p, 1).screw.hand = 'up' as 'right';
        revisionAt(p, 2).drive.fullStepsPerTurn = 200.5;
        p.process.ambientC = Number.NaN;
        p.activeRevision = 'Z';
        (p.print as Partial<Project['print']>).speedMmPerS = undefined as never;
      }),
    );
    const issues = issuesOf(text);
    expect(brief(issues)).toEqual([
      'revisions[0].barrel.boreDiameterMm: out-of-range',
      'revisions[1].screw.hand: not-a-choice',
      'revisions[2].drive.fullStepsPerTurn: wrong-type',
      'process.ambientC: wrong-type',
      'print.speedMmPerS: missing',
      'activeRevision: unknown-id',
    ]);
    expect(issues[0]).toMatchObject({ value: '2', allowed: 'a number from 3 to 200 mm' });
    expect(issues[1]).toMatchObject({ value: '"up"', allowed: 'one of: "right", "left"' });
    expect(issues[3]).toMatchObject({ value: 'null', allowed: 'a number from -30 to 80 °C' });
    expect(issues[4]).toMatchObject({ allowed: 'a number from 0.01 to 2000 mm/s', remedy: 'Add the field.' });
    expect(issues[5]).toMatchObject({ value: 'Z', allowed: 'one of: A, B, C' });
  });

  it('name the kinds that a choice allows', () => {
    const [issue] = issuesOf(
      JSON.stringify(changedDemo((p) => (revisionAt(p, 0).screw.tip = { kind: 'spoon' } as never))),
    );
    expect(issue).toMatchObject({
      code: 'not-a-choice',
      allowed: 'one of: kind "flat", kind "cone", kind "hemisphere"',
    });
    expect(pathText(issue?.path ?? [])).toBe('revisions[0].screw.tip.kind');
  });

  it('take the unit of a material value from the field around it', () => {
    const [issue] = issuesOf(
      JSON.stringify(changedDemo((p) => ((p.materials[0] as Project['materials'][number]).meltDensityKgM3.value = 1))),
    );
    expect(issue?.allowed).toBe('a number from 200 to 5000 kg/m³');
  });

  it.each<[string, (p: Project) => void, string]>([
    ['two materials of one id', (p) => p.materials.push(p.materials[0] as never), 'materials[1].id: duplicate-id'],
    ['an unknown parent', (p) => (revisionAt(p, 1).parent = 'X'), 'revisions[1].parent: unknown-id'],
    ['an unknown material', (p) => (revisionAt(p, 0).materialId = 'x'), 'revisions[0].materialId: unknown-id'],
    [
      'a trial of an unknown revision',
      (p) => Object.assign(p.benchLog[0] as object, { revisionId: 'X' }),
      'benchLog[0].revisionId: unknown-id',
    ],
    [
      'two trials of one id',
      (p) => Object.assign(p.benchLog[1] as object, { id: 'T1' }),
      'benchLog[1].id: duplicate-id',
    ],
    ['a zone past the barrel', (p) => zone(p, 3, { endMm: 167 }), 'revisions[0].barrel.zones[3].endMm: zone-outside'],
    [
      'a zone that ends before it starts',
      (p) => zone(p, 2, { startMm: 58, endMm: 57 }),
      'revisions[0].barrel.zones[2].endMm: zone-backwards',
    ],
    ['zones that overlap', (p) => zone(p, 2, { startMm: 50 }), 'revisions[0].barrel.zones[2].startMm: zones-overlap'],
    [
      'a doubt range beside its value',
      (p) => (law(p).low = 1),
      'materials[0].degradation[0].rateAtReferencePerS.low: range-order',
    ],
    [
      'an unknown colour law',
      (p) => Object.assign(p.materials[0] as object, { colourLaw: 'x' }),
      'materials[0].colourLaw: unknown-id',
    ],
    [
      'colour anchors out of order',
      (p) => p.materials[0]?.colourAnchors.reverse(),
      'materials[0].colourAnchors[1].extent: extent-order',
    ],
  ])('%s', (_, change, expected) => {
    expect(brief(issuesOf(JSON.stringify(changedDemo(change))))).toEqual([expected]);
  });

  it.each<[string, (p: Record<string, unknown>) => void, readonly string[]]>([
    ['a material that is null', (p) => put(p, 'materials', [null]), ['materials[0]: wrong-type']],
    ['no materials', (p) => put(p, 'materials', []), ['materials: out-of-range']],
    ['materials that are no list', (p) => put(p, 'materials', {}), ['materials: wrong-type']],
  ])('%s does not fault whoever names it', (_, change, expected) => {
    expect(brief(issuesOf(damaged(change)))).toEqual(expected);
  });

  it('are not followed by what only follows from them', () => {
    const issues = issuesOf(
      JSON.stringify(
        changedDemo((p) => {
          law(p).value = -1;
          revisionAt(p, 0).barrel.lengthMm = -1;
          zone(p, 2, { startMm: -5, endMm: -6 });
        }),
      ),
    );
    expect(brief(issues)).toEqual([
      'revisions[0].barrel.lengthMm: out-of-range',
      'revisions[0].barrel.zones[2].startMm: out-of-range',
      'revisions[0].barrel.zones[2].endMm: out-of-range',
      'materials[0].degradation[0].rateAtReferencePerS.value: out-of-range',
    ]);
  });

  it('two revisions of one id', () => {
    const issues = issuesOf(
      JSON.stringify(
        changedDemo((p) => {
          revisionAt(p, 2).id = 'A';
          p.activeRevision = 'A';
          p.benchLog = [];
        }),
      ),
    );
    expect(brief(issues)).toEqual(['revisions[2].id: duplicate-id']);
    expect(issues[0]?.allowed).toBe('an id that no other revision has; taken: A, B');
  });

  it('a revision that descends from itself', () => {
    const text = JSON.stringify(changedDemo((p) => (revisionAt(p, 0).parent = 'C')));
    expect(brief(issuesOf(text))).toEqual([0, 1, 2].map((i) => `revisions[${i}].parent: circular-parent`));
  });

  it('are found in a material file in the same way', () => {
    const text = assetText('materials/pla.json');
    expect(codesOf(parseMaterial(text))).toEqual([]);
    expect(codesOf(parseMaterial(text.replace('"value": 1085', '"value": "heavy"')))).toEqual(['wrong-type']);
    expect(codesOf(parseMaterial('{'))).toEqual(['bad-json']);
  });
});

describe('words of an issue', () => {
  const first = (change: (p: Project) => void) => issuesOf(JSON.stringify(changedDemo(change)))[0];

  it('say that a number is too large to be read', () => {
    const [issue] = issuesOf(demoText.replace(/"ambientC": [\d.]+/, '"ambientC": 1e999'));
    expect(issue).toMatchObject({
      code: 'out-of-range',
      message: 'The number is too large.',
      value: 'a number beyond 1.8e308',
      allowed: 'a number from -30 to 80 °C',
    });
  });

  it('count one entry and one character as one', () => {
    expect(first((p) => (revisionAt(p, 0).screw.sections = []))?.allowed).toBe(
      'a list, at least 1 entry, at most 40 entries',
    );
    expect(first((p) => (p.name = ''))).toMatchObject({
      value: '""',
      allowed: 'a text, at least 1 character, at most 120 characters',
    });
  });

  it('show an empty id', () => {
    expect(first((p) => (p.activeRevision = ''))).toMatchObject({ code: 'unknown-id', value: '""' });
  });

  it('tell a version that is missing from one that is none', () => {
    expect(issuesOf(damaged((d) => (d.version = 1.5)))[0]?.message).toMatch(/no whole number/);
    expect(issuesOf(damaged((d) => (d.version = '1')))[0]?.message).toMatch(/no whole number/);
    expect(issuesOf(damaged((d) => (d.version = undefined)))[0]?.message).toMatch(/does not state/);
  });
});

function put(target: Record<string, unknown>, key: string, value: unknown): void {
  target[key] = value;
}

function zone(p: Project, index: number, change: { startMm?: number; endMm?: number }): void {
  Object.assign(revisionAt(p, 0).barrel.zones[index] as object, change);
}

function law(p: Project) {
  const found = p.materials[0]?.degradation[0];
  if (!found || found.kind === 'twoStep') throw new Error('the demo has a degradation law with one rate');
  return found.rateAtReferencePerS;
}

describe('whatever is put in', () => {
  it('a stray value anywhere is answered by a result, never an exception', () => {
    fc.assert(
      fc.property(anyProject, strayValue, fc.nat(), (project, stray, pick) => {
        const data = JSON.parse(serializeProject(project));
        const places: [Record<string, unknown>, string][] = [];
        const collect = (node: unknown): void => {
          if (typeof node !== 'object' || node === null) return;
          for (const [key, item] of Object.entries(node)) {
            places.push([node as Record<string, unknown>, key]);
            collect(item);
          }
        };
        collect(data);
        const place = places[pick % places.length];
        if (place) place[0][place[1]] = stray;
        const result = parseProject(JSON.stringify(data));
        if (!result.ok) for (const issue of result.issues) expect(issue.remedy.length).toBeGreaterThan(5);
      }),
      pinned(300),
    );
  });
});
