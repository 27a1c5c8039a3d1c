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
  /** made from our own files at build time, without scripts and styles */
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
    },
  });
  const title = /^# (.+)$/m.exec(markdown)?.[1] ?? id;
  const html = marked.parse(markdown, { async: false });
  return { id, title, headings, html, words: markdown.toLowerCase() };
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

/** All pages, in the order in which the index names them; the index first. */
export function handbookPages(): readonly HandbookPage[] {
  const read = (id: string) => readFileSync(`${folder}${id}.md`, 'utf8');
  const index = read('index');
  const order = [...index.matchAll(/\]\(([\w-]+)\.md\)/g)].map((match) => match[1] ?? '');
  const there = readdirSync(folder).map((name) => name.replace(/\.md$/, ''));
  const lost = there.filter((id) => id !== 'index' && !order.includes(id));
  if (lost.length > 0) throw new Error(`the handbook's index does not lead to: ${lost.join(', ')}`);
  const shown = ['index', ...new Set(order)].filter((id) => there.includes(id));
  return shown.map((id) => handbookPage(id, read(id)));
}

/** Vite plugin that serves `virtual:handbook`. */
export const handbookModule = (): Plugin => ({
  name: 'handbook',
  resolveId: (id) => (id === moduleName ? `\0${moduleName}` : null),
  load(id) {
    if (id !== `\0${moduleName}`) return null;
    for (const name of readdirSync(folder)) this.addWatchFile(folder + name);
    return `export const pages = ${JSON.stringify(handbookPages())};`;
  },
});
