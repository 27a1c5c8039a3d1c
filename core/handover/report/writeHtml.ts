/** The report as one web page: no script, nothing fetched, readable by ear, on paper, and on light and dark screens. */

import { reportStyle } from './htmlStyle.ts';
import type { Block, Cell, FigureBlock, Report, ReportSection, TableBlock } from './model.ts';
import { type PathShape, type Picture, paperTones, type TextShape, type Tone } from './picture.ts';

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text inside an element or a quoted attribute; signs that no page may hold become spaces. */
const safe = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must go
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, ' ')
    .replace(/[&<>"]/g, (sign) => escapes[sign] ?? sign);

const cellHtml = ({ text, to, swatch, strong }: Cell): string => {
  const field = swatch ? `<span class="swatch" style="background:${safe(swatch)}"></span> ` : '';
  const words = strong ? `<strong>${safe(text)}</strong>` : safe(text);
  return `${field}${to ? `<a href="#${safe(to)}">${words}</a>` : words}`;
};

function tableHtml({ id, caption, columns, rows }: TableBlock): string {
  const side = (i: number) => (columns[i]?.align === 'right' ? ' class="number"' : '');
  const total = columns.reduce((sum, { share }) => sum + share, 0);
  const widths = columns.map(({ share }) => `<col style="width:${((100 * share) / total).toFixed(1)}%">`).join('');
  const head = columns.map(({ label }, i) => `<th scope="col"${side(i)}>${safe(label)}</th>`).join('');
  const body = rows.map((row) => {
    const cells = row.map((each, i) =>
      i === 0 ? `<th scope="row"${side(i)}>${cellHtml(each)}</th>` : `<td${side(i)}>${cellHtml(each)}</td>`,
    );
    return `<tr>${cells.join('')}</tr>`;
  });
  return `<div class="wide" tabindex="0" role="group" aria-labelledby="${id}-caption"><table id="${id}"><caption id="${id}-caption">${safe(caption)}</caption><colgroup>${widths}</colgroup><thead><tr>${head}</tr></thead><tbody>
${body.join('\n')}
</tbody></table></div>`;
}

const colourOf = (tone: Tone): string => (tone.startsWith('#') ? tone : `var(--${tone})`);
const short = (value: number): string => String(Math.round(value * 100) / 100);

function pathHtml({ pieces, closed, fill, stroke, width, dash }: PathShape): string {
  const d = pieces
    .filter((piece) => piece.length > 0)
    .map((piece) => `M${piece.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}${closed ? 'Z' : ''}`)
    .join('');
  if (d === '') return '';
  const lines = stroke ? ` stroke="${colourOf(stroke)}" stroke-width="${short(width)}"` : '';
  const dashes = dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : '';
  return `<path d="${d}" fill="${fill ? colourOf(fill) : 'none'}"${fill ? ' fill-rule="nonzero"' : ''}${lines}${dashes}/>`;
}

function wordHtml({ x, y, text, size, anchor, turned, tone }: TextShape): string {
  const turn = turned ? ` transform="rotate(-90 ${short(x)} ${short(y)})"` : '';
  return `<text x="${short(x)}" y="${short(y)}" font-size="${size}" text-anchor="${anchor}" fill="${colourOf(tone)}"${turn}>${safe(text)}</text>`;
}

function pictureHtml({ width, height, shapes }: Picture, id: string, title: string, alt: string): string {
  const drawn = shapes.map((shape) => (shape.kind === 'path' ? pathHtml(shape) : wordHtml(shape)));
  return `<svg viewBox="0 0 ${short(width)} ${short(height)}" role="img" aria-labelledby="${id}-title ${id}-desc"><title id="${id}-title">${safe(title)}</title><desc id="${id}-desc">${safe(alt)}</desc>${drawn.join('')}</svg>`;
}

const figureHtml = ({ id, caption, alt, picture }: FigureBlock): string =>
  `<figure id="${id}">${pictureHtml(picture, id, caption, alt)}<figcaption>${safe(caption)}</figcaption></figure>`;

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `<h3 id="${block.id}">${safe(block.text)}</h3>`;
    case 'paragraph':
      return `<p${block.tone ? ` class="${block.tone}"` : ''}>${safe(block.text)}</p>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${cellHtml(item)}</li>`).join('')}</ul>`;
    case 'table':
      return tableHtml(block);
    case 'figure':
      return figureHtml(block);
  }
}

const sectionHtml = ({ id, title, blocks, ownPage }: ReportSection): string =>
  `<section id="${id}"${ownPage ? ' class="own-page"' : ''} aria-labelledby="${id}-head"><h2 id="${id}-head">${safe(title)}</h2>
${blocks.map(blockHtml).join('\n')}
</section>`;

const notices = ({ notices: list }: Report): string =>
  list.length === 0 ? '' : `<p class="notice" role="note">${list.map(safe).join(' ')}</p>`;

function titleHtml(report: Report): string {
  const facts = report.facts.map(({ label, text }) => `<dt>${safe(label)}</dt><dd>${safe(text)}</dd>`).join('');
  return `<header><h1>${safe(report.title)}</h1><p class="subtitle">${safe(report.subtitle)}</p><dl>${facts}</dl></header>
<section aria-labelledby="answer"><h2 id="answer">The answer in short</h2>
${report.summary.map(blockHtml).join('\n')}
</section>`;
}

const contents = ({ sections }: Report): string =>
  `<nav aria-labelledby="contents"><h2 id="contents">Contents</h2><ol>${sections
    .map(({ id, title }) => `<li><a href="#${id}">${safe(title)}</a></li>`)
    .join('')}</ol></nav>`;

/** Tones as values a page can choose between. */
const tones = (): string =>
  Object.entries(paperTones)
    .map(([name, value]) => `--${name}:${value}`)
    .join(';');

/** The report as the text of an HTML file. */
export const reportHtml = (report: Report): string => `<!doctype html>
<html lang="${report.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="generator" content="Augerwright">
<title>${safe(`${report.title} – ${report.subtitle}`)}</title>
<style>:root{${tones()}}${reportStyle}</style>
</head>
<body>
${notices(report)}
<main>
${titleHtml(report)}
${contents(report)}
${report.sections.map(sectionHtml).join('\n')}
</main>
<footer><p>${safe(report.running)} – ${safe(report.date)}</p></footer>
</body>
</html>
`;
