import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkStages } from '../../../core/checks/types.ts';
import { predict } from '../../../core/prediction/predict.ts';
import { present } from '../../../core/present/present.ts';
import { stageOfPlace } from '../../../renderer/checks/store.ts';
import { allPlaces, groupPlaces, placeOf } from '../../../renderer/handbook/places.ts';
import { handbookCode, handbookPage, handbookPages, webpSize } from '../../../renderer/handbookPages.ts';
import { loadDesign } from '../../helpers/projects.ts';

const pages = handbookPages();
const there = new Set(pages.flatMap(({ id, headings }) => [id, ...headings.map(({ anchor }) => `${id}#${anchor}`)]));

test('every place that figures lead to is a page and a heading of it', () => {
  expect(allPlaces.length).toBeGreaterThan(20);
  expect(allPlaces.filter((place) => !there.has(place))).toEqual([]);
});

test('every stage of the checks has a page, and every figure leads to the checks of a stage', () => {
  const ids = new Set(pages.map(({ id }) => stageOfPlace(id)));
  expect(checkStages.filter((stage) => !ids.has(stage))).toEqual([]);
  expect(allPlaces.map(stageOfPlace).filter((stage) => !checkStages.some((one) => one === stage))).toEqual([]);
});

test('every group of figures has its place, and every figure of it one that is there', () => {
  const design = loadDesign('demo');
  const { groups } = present(predict(design, { curvePoints: 0, warmUp: true }), design);
  expect(groups.length).toBeGreaterThan(8);
  expect(groups.map(({ id }) => id).filter((id) => id !== 'inputs' && !Object.hasOwn(groupPlaces, id))).toEqual([]);
  const lost = groups.flatMap(({ id, rows }) => rows.map((row) => placeOf(id, row.id)).filter((at) => !there.has(at)));
  expect(lost).toEqual([]);
});

test('a picture stands in a figure with its caption, its words and its room; its address comes from the bundler', () => {
  const text = '# Tip\n\n![An old "corner" & more](pictures/tip-age.webp)\n\n_The corner._\n\nNext.\n';
  const page = handbookPage('tip', text);
  const [, width = 0, height = 0] = /width="(\d+)" height="(\d+)"/.exec(page.html)?.map(Number) ?? [];
  expect(page.html).toMatch(
    /<figure><img src="picture:tip-age\.webp" alt="An old &quot;corner&quot; &amp; more" [^>]*>/,
  );
  expect(page.html).toContain('<figcaption>The corner.</figcaption></figure>');
  // half the points of the file: two for one of the window
  const points = webpSize(readFileSync('assets/handbook/pictures/tip-age.webp'));
  expect([2 * width, 2 * height]).toEqual(points);
  const code = handbookCode([page]);
  expect(code).toMatch(/^import picture0 from "[^"]+\/tip-age\.webp\?url";$/m);
  expect(code).toContain('src=\\"" + picture0 + "\\"');
  expect(code).not.toContain('picture:');
});

test('links between pages lead to pages and headings', () => {
  const links = pages.flatMap(({ id, html }) =>
    [...html.matchAll(/href="([^"]+)"/g)].map(([, to]) =>
      to?.startsWith('#') ? id + to : (to ?? '').replace('.md', ''),
    ),
  );
  expect(links.length).toBeGreaterThan(20);
  expect(links.filter((to) => !there.has(to))).toEqual([]);
});

describe('a page', () => {
  const page = handbookPage('heat', '# Heat\n\n## Warming up\n\n<script>x</script>\n\n```\na < b\n```\n');

  test('has its title and the anchors of its headings', () => {
    expect(page.title).toBe('Heat');
    expect(page.headings).toEqual([{ anchor: 'warming-up', title: 'Warming up' }]);
  });

  test('leaves raw HTML out and keeps formulas', () => {
    expect(page.html).not.toContain('<script');
    expect(page.html).toContain('a &lt; b');
  });
});
