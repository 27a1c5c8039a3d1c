import type { Block, Report } from '../../core/handover/report/model.ts';

/** The report's texts, every one, in reading order. */
export function* reportTexts(report: Report): Generator<string> {
  yield* [report.title, report.subtitle, report.running, ...report.notices];
  for (const { label, text } of report.facts) yield* [label, text];
  yield* blockTexts(report.summary);
  for (const section of report.sections) {
    yield section.title;
    yield* blockTexts(section.blocks);
  }
}

function* blockTexts(blocks: readonly Block[]): Generator<string> {
  for (const block of blocks) {
    switch (block.kind) {
      case 'heading':
      case 'paragraph':
        yield block.text;
        break;
      case 'list':
        yield* block.items.map(({ text }) => text);
        break;
      case 'table':
        yield* [block.caption, ...block.columns.map(({ label }) => label)];
        for (const row of block.rows) yield* row.map(({ text }) => text);
        break;
      case 'figure':
        yield* [block.caption, block.alt];
        for (const shape of block.picture.shapes) if (shape.kind === 'text') yield shape.text;
    }
  }
}
