/** Puts blocks on sheets in rows, none over another; what does not fit begins a new sheet. */

import type { Block, Box } from './model.ts';
import { movedBlock } from './shapes.ts';

/** Least distance of blocks, mm. */
const gap = 6;

interface Row {
  readonly blocks: Block[];
  width: number;
  height: number;
}

interface Page {
  readonly rows: Row[];
  readonly aside: Row;
}

const widthOf = ({ box }: Block): number => box.right - box.left;
const heightOf = ({ box }: Block): number => box.top - box.bottom;
const newRow = (): Row => ({ blocks: [], width: 0, height: 0 });

function put(row: Row, block: Block): void {
  row.width += widthOf(block) + (row.blocks.length > 0 ? gap : 0);
  row.height = Math.max(row.height, heightOf(block));
  row.blocks.push(block);
}

const used = ({ rows }: Page): number =>
  rows.reduce((sum, row) => sum + row.height, 0) + gap * Math.max(0, rows.length - 1);

/** Puts a block where there is room on a page; false where there is none. */
function place(page: Page, block: Block, main: Box, aside: Box): boolean {
  const [width, height] = [main.right - main.left, main.top - main.bottom];
  const beside = page.aside.width + widthOf(block) + (page.aside.blocks.length > 0 ? gap : 0);
  if (block.aside && beside <= aside.right - aside.left && heightOf(block) <= aside.top - aside.bottom) {
    put(page.aside, block);
    return true;
  }
  const fitting = page.rows.find((row) => {
    const grown = Math.max(0, heightOf(block) - row.height);
    return row.width + gap + widthOf(block) <= width && used(page) + grown <= height;
  });
  if (fitting) {
    put(fitting, block);
    return true;
  }
  const first = page.rows.length === 0;
  if (!first && used(page) + gap + heightOf(block) > height) return false;
  const row = newRow();
  put(row, block);
  page.rows.push(row);
  return true;
}

/** Blocks of a row at their places: shared out along the width, in the middle of the row's height. */
function settleRow(row: Row, left: number, width: number, middle: number): Block[] {
  const spare = Math.max(0, width - row.width) / (row.blocks.length + 1);
  let x = left + spare;
  return row.blocks.map((block) => {
    const moved = movedBlock(block, x - block.box.left, middle - (block.box.top + block.box.bottom) / 2);
    x += widthOf(block) + gap + spare;
    return moved;
  });
}

function settle(page: Page, main: Box, aside: Box): Block[] {
  const spare = Math.max(0, main.top - main.bottom - used(page)) / (page.rows.length + 1);
  let top = main.top - spare;
  const rows = page.rows.flatMap((row) => {
    const blocks = settleRow(row, main.left, main.right - main.left, top - row.height / 2);
    top -= row.height + gap + spare;
    return blocks;
  });
  let x = aside.left;
  const side = page.aside.blocks.map((block) => {
    const moved = movedBlock(block, x - block.box.left, aside.top - block.box.top);
    x += widthOf(block) + gap;
    return moved;
  });
  return [...rows, ...side];
}

/**
 * Blocks on as many pages as they need, in their order.
 * @param main room above the title block; @param aside room beside it
 */
export function packBlocks(blocks: readonly Block[], main: Box, aside: Box): Block[][] {
  const pages: Page[] = [];
  for (const block of blocks) {
    if (pages.some((page) => place(page, block, main, aside))) continue;
    const page: Page = { rows: [], aside: newRow() };
    place(page, block, main, aside);
    pages.push(page);
  }
  return pages.map((page) => settle(page, main, aside));
}
