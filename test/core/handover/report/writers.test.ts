import { JSDOM } from 'jsdom';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import PDFDocument from 'pdfkit';
import { beforeAll, describe, expect, test } from 'vitest';
import { paragraph, type Report, table } from '../../../../core/handover/report/model.ts';
import type { PdfPaperClass } from '../../../../core/handover/report/pdfTypes.ts';
import { htmlModule, reportModule } from '../../../../core/handover/report/reportModules.ts';
import { reportHtml } from '../../../../core/handover/report/writeHtml.ts';
import { reportPdf } from '../../../../core/handover/report/writePdf.ts';
import { runHandover } from '../../../../core/handover/run.ts';
import { expectOk } from '../../../helpers/projects.ts';
import { predictedSource } from '../source.ts';
import { cases, figuresOf, reportsOfCases, tools } from './cases.ts';

let reports: Report[] = [];
beforeAll(async () => {
  reports = await reportsOfCases();
});

interface Node {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly Node[];
}

function* nodes(node: Node): Generator<Node> {
  yield node;
  for (const child of node.children ?? []) yield* nodes(child);
}

async function opened(report: Report) {
  const { bytes, pages } = await reportPdf(report, PDFDocument as PdfPaperClass);
  const pdf = await getDocument({ data: bytes, verbosity: 0, useSystemFonts: false }).promise;
  return { pdf, pages };
}

describe('PDF', () => {
  test.each(cases.map(([name], i) => [name, i] as const))(
    'of %s is read back: pages, text, structure, outline',
    async (_, i) => {
      const report = reports[i];
      const { pdf, pages } = await opened(report);
      expect(pdf.numPages).toBe(pages);
      const { info } = await pdf.getMetadata();
      expect(info).toMatchObject({ Title: `${report.title} – ${report.subtitle}`, Language: 'en' });
      expect((await pdf.getMarkInfo())?.Marked).toBe(true);
      const alts: string[] = [];
      const texts: string[] = [];
      for (let n = 1; n <= pages; n++) {
        const page = await pdf.getPage(n);
        const { items } = await page.getTextContent();
        const words = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []));
        texts.push(words.map(({ str }) => str).join(' '));
        const [, , width, height] = page.view;
        for (const { transform, width: wide, str } of words) {
          const turned = transform[1] !== 0;
          expect(transform[4] >= 40 && transform[4] + (turned ? 0 : wide) <= width - 40, `${n}: ${str}`).toBe(true);
          expect(transform[5] >= 20 && transform[5] + (turned ? wide : 0) <= height - 20, `${n}: ${str}`).toBe(true);
        }
        expect(texts[n - 1]).toContain(`${n} of ${pages}`);
        expect(texts[n - 1]).toContain('This project is invented');
        for (const { role, alt } of nodes((await page.getStructTree()) as Node))
          if (role === 'Figure') alts.push(alt ?? '');
      }
      expect(alts.length).toBe(figuresOf(report).length);
      expect(alts.every((alt) => alt.length > 40)).toBe(true);
      expect(texts.slice(0, 2).join(' ')).toContain('Contents');
      expect(texts[pages - 1]).toContain('hash of the revision as stored');
      const outline = await pdf.getOutline();
      expect(outline.map(({ title }) => title).slice(1)).toEqual(report.sections.map(({ title }) => title));
      for (const { dest, title } of outline) {
        const place = await pdf.getPageIndex((dest as { num: number; gen: number }[])[0]);
        expect(texts[place]).toContain(title);
      }
      const method = texts.filter(
        (text) => text.includes('How the figures came about') || text.includes('What they cannot say'),
      );
      expect(method.length).toBe(1);
      await pdf.destroy();
    },
  );

  test('links lead to named places', async () => {
    const { pdf } = await opened(reports[0]);
    const annotations = (
      await Promise.all([1, 2, 3, 4].map(async (n) => (await pdf.getPage(n)).getAnnotations()))
    ).flat();
    const links = annotations.filter(({ subtype }) => subtype === 'Link');
    expect(links.length).toBeGreaterThan(10);
    for (const { dest } of links) expect(await pdf.getDestination(String(dest)), String(dest)).not.toBeNull();
    await pdf.destroy();
  });

  test('a table over pages repeats its head, and a cell longer than a page goes on', async () => {
    const long = Array.from({ length: 2400 }, (_, i) => `word${i}`).join(' ');
    const rows = [...Array.from({ length: 120 }, (_, i) => [`row ${i}`, 'b']), ['long', long]];
    const blocks = [table('t', 'Many rows', ['First column|30', 'Second column|70'], rows), paragraph('After.')];
    const { pdf, pages } = await opened({ ...reports[0], sections: [{ id: 's', title: 'S', blocks }] });
    const texts = await Promise.all(
      Array.from({ length: pages - 1 }, async (_, i) => {
        const { items } = await (await pdf.getPage(i + 2)).getTextContent();
        return items.map((item) => ('str' in item ? item.str : '')).join(' ');
      }),
    );
    expect(texts.length).toBeGreaterThan(3);
    expect(texts.every((text) => text.includes('First column'))).toBe(true);
    expect(texts.join(' ').match(/word\d+/g)?.length).toBe(2400);
    await pdf.destroy();
  });
});

describe('web page', () => {
  test.each(cases.map(([name], i) => [name, i] as const).slice(1))(
    'of %s stands alone and can be read by ear',
    (_, i) => {
      const html = reportHtml(reports[i]);
      const { document } = new JSDOM(html).window;
      for (const link of document.querySelectorAll('a')) {
        const to = link.getAttribute('href') ?? '';
        expect(to.startsWith('#') && document.getElementById(to.slice(1)) !== null, to).toBe(true);
      }
      const all = [...document.querySelectorAll('[id]')].map(({ id }) => id);
      expect(all.length).toBe(new Set(all).size);
      expect(document.querySelectorAll('svg').length).toBe(figuresOf(reports[i]).length);
      for (const svg of document.querySelectorAll('svg'))
        for (const id of (svg.getAttribute('aria-labelledby') ?? '').split(' '))
          expect(document.getElementById(id)?.textContent?.length).toBeGreaterThan(3);
      for (const head of document.querySelectorAll('th')) expect(head.hasAttribute('scope')).toBe(true);
      expect(document.querySelectorAll('script,link,img,iframe,object').length).toBe(0);
      expect(html).not.toMatch(/url\(|(?:src|href)="(?!#)|@import/);
      expect(document.querySelector('meta[http-equiv]')?.getAttribute('content')).toContain("default-src 'none'");
      expect(document.querySelector('.notice')?.textContent).toContain('invented');
    },
  );

  test('a name with signs of markup stays text', () => {
    const { document } = new JSDOM(reportHtml({ ...reports[2], title: '<script>a</script>&"' })).window;
    expect(document.querySelector('h1')?.textContent).toBe('<script>a</script>&"');
    expect(document.querySelectorAll('script').length).toBe(0);
  });
});

test('both kinds are written through the one way in, with pages told', async () => {
  const source = await predictedSource('pla-pellet-misfit', ['P1']);
  const [pdf] = expectOk(await runHandover(reportModule, source, { samples: 0 }, tools));
  expect(String.fromCharCode(...pdf.bytes.subarray(0, 8))).toBe('%PDF-1.7');
  expect(Number(pdf.facts.find(({ label }) => label === 'Pages')?.text)).toBeGreaterThan(5);
  const [html] = expectOk(await runHandover(htmlModule, source, { samples: 0 }, tools));
  expect(new TextDecoder().decode(html.bytes)).toContain('<!doctype html>');
  expect(pdf.name).toMatch(/P1-report\.pdf$/);
});
