/** Hands a plot out: to the clipboard where the browser lets it, else as a file by the host. */

import type uPlot from 'uplot';
import { getBridge } from '../bridge.ts';
import { announce } from '../files.ts';
import { plotText } from '../strings/plots.ts';
import { plotPicture } from './plotPicture.ts';
import { tableText } from './plotTable.ts';

/** A file name out of a plot's name. */
const fileName = (name: string, ending: string): string =>
  `${
    name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-|-$/g, '')
      .slice(0, 60) || 'plot'
  }.${ending}`;

async function save(name: string, data: Uint8Array | string, said: (name: string) => string): Promise<void> {
  const saved = await getBridge().exportFile(name, data);
  if (!saved.ok) throw new Error(saved.issues[0]?.message ?? '');
  if (saved.value) announce('good', said(saved.value.name));
}

const blobOf = (canvas: HTMLCanvasElement): Promise<Blob> =>
  new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('empty picture'))), 'image/png'),
  );

/** Whether the clipboard took it; refusal is no fault, there is another way. */
async function toClipboard(write: () => Promise<void>): Promise<boolean> {
  try {
    await write();
    return true;
  } catch {
    return false;
  }
}

const told = (reason: unknown): void =>
  announce('bad', `${plotText.failed} ${reason instanceof Error ? reason.message : String(reason)}`);

/** Copies what is seen, with name and key. */
export async function copyPicture(plot: uPlot, name: string, names: readonly string[]): Promise<void> {
  try {
    const style = getComputedStyle(plot.root);
    const colour = (key: string) => style.getPropertyValue(key).trim();
    const blob = await blobOf(plotPicture(plot, name, names, { page: colour('--pane'), text: colour('--ink') }));
    const taken = await toClipboard(() => navigator.clipboard.write([new ClipboardItem({ 'image/png': blob })]));
    if (taken) announce('good', plotText.copiedPicture);
    else await save(fileName(name, 'png'), new Uint8Array(await blob.arrayBuffer()), plotText.savedPicture);
  } catch (reason) {
    told(reason);
  }
}

/** Copies all points, whether zoomed or not. */
export async function copyData(
  name: string,
  names: readonly string[],
  data: readonly ArrayLike<number | null | undefined>[],
): Promise<void> {
  try {
    const text = tableText(names, data);
    const taken = await toClipboard(() => navigator.clipboard.writeText(text));
    if (taken) announce('good', plotText.copiedData(data[0]?.length ?? 0));
    else await save(fileName(name, 'tsv'), text, plotText.savedData);
  } catch (reason) {
    told(reason);
  }
}
