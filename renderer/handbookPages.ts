/** Build step that makes the handbook's Markdown pages into one module: nothing is read or parsed in the window. */

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Marked } from 'marked';
import type { Plugin } from 'vite';

const folder = fileURLToPath(new URL('../assets/handbook/', import.meta.url));
const moduleName = 'virtual:handbook';

/** A page as the window shows it. */
export interface HandbookPage {
  /** file name without its ending */
  readonly id: string;
  /** its first heading */
  readonly title: string;
  /** headings below the title, each with its anchor */
  readonly headings: readonly { readonly anchor: string; readonly title: string }[];
  /** made from our own files at build time, without scripts and styles; pictures stand as `picture:NAME` */
  readonly html: string;
  /** the words alone, in small letters, for finding */
  readonly words: string;
}

/** Anchor of a heading: small letters and digits, joined by hyphens. */
export const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');

/** Points of a picture for one of the window, as `test/helpers/pictures.ts` takes them. */
const density = 2;

/** Width and height of a WebP in its extended form, in points: 24 bits each, less one, in its first chunk. */
export function webpSize(bytes: Uint8Array): readonly [width: number, height: number] {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  if (view.getUint32(12) !== 0x56503858) throw new Error('not a WebP in its extended form');
  const sizeAt = (at: number) => (view.getUint16(at, true) | (view.getUint8(at + 2) << 16)) + 1;
  return [sizeAt(24), sizeAt(27)];
}

/** A picture whose room is known before it is there, so that a place turned to stays where it is. */
function pictureHtml(href: string, alt: string): string {
  const name = href.replace(/^pictures\//, '');
  const [width, height] = webpSize(readFileSync(`${folder}pictures/${name}`)).map((points) =>
    Math.round(points / density),
  );
  return `<img src="picture:${name}" alt="${escaped(alt)}" width="${width}" height="${height}">`;
}

/** A picture alone in its paragraph with words in italics after it: a figure with its caption. */
const withCaptions = (html: string): string =>
  html.replace(
    /<p>(<img [^>]*>)<\/p>\n<p><em>((?:(?!<\/em>).)*)<\/em><\/p>/g,
    '<figure>$1<figcaption>$2</figcaption></figure>',
  );

/** Makes a page of its Markdown; raw HTML in it is left out. */
export function handbookPage(id: string, markdown: string): HandbookPage {
  const headings: { anchor: string; title: string }[] = [];
  const marked = new Marked({
    renderer: {
      heading({ text, depth, tokens }) {
        const anchor = anchorOf(text);
        if (depth > 1) headings.push({ anchor, title: text });
        // the dialog's own title is the level above
        return `<h${depth + 1} id="handbook-${anchor}" tabindex="-1">${this.parser.parseInline(tokens)}</h${depth + 1}>\n`;
      },
      code: ({ text }) => `<pre tabindex="0">${escaped(text)}</pre>\n`,
      html: () => '',
      image: ({ href, text }) => pictureHtml(href, text),
    },
  });
  const title = /^# (.+)$/m.exec(markdown)?.[1] ?? id;
  const html = withCaptions(marked.parse(markdown, { async: false }));
  return { id, title, headings, html, words: markdown.toLowerCase() };
}

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** All pages, in the order in which the index names them; the index first. */
export function handbookPages(): readonly HandbookPage[] {
  const read = (id: string) => readFileSync(`${folder}${id}.md`, 'utf8');
  const index = read('index');
  const order = [...index.matchAll(/\]\(([\w-]+)\.md\)/g)].map((match) => match[1] ?? '');
  const files = readdirSync(folder).filter((name) => name.endsWith('.md'));
  const there = files.map((name) => name.replace(/\.md$/, ''));
  const lost = there.filter((id) => id !== 'index' && !order.includes(id));
  if (lost.length > 0) throw new Error(`the handbook's index does not lead to: ${lost.join(', ')}`);
  const shown = ['index', ...new Set(order)].filter((id) => there.includes(id));
  return shown.map((id) => handbookPage(id, read(id)));
}

/** The module's text: pages, and the address that the bundler gives each picture in place of its name. */
export function handbookCode(pages: readonly HandbookPage[]): string {
  const text = JSON.stringify(pages);
  const names = [...new Set([...text.matchAll(/picture:([\w.-]+)/g)].map((match) => match[1] ?? ''))];
  const imports = names.map(
    (name, at) => `import picture${at} from ${JSON.stringify(`${folder}pictures/${name}?url`)};`,
  );
  const code = names.reduce((all, name, at) => all.replaceAll(`picture:${name}`, `" + picture${at} + "`), text);
  return [...imports, `export const pages = ${code};`].join('\n');
}

/** Vite plugin that serves `virtual:handbook`. */
export const handbookModule = (): Plugin => ({
  name: 'handbook',
  resolveId: (id) => (id === moduleName ? `\0${moduleName}` : null),
  load(id) {
    if (id !== `\0${moduleName}`) return null;
    for (const name of readdirSync(folder, { recursive: true })) this.addWatchFile(folder + name);
    return handbookCode(handbookPages());
  },
});
