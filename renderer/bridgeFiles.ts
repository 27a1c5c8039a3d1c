/** The browser's own ways to take a file in and hand one out, used where the host has no dialogs. */

import { fail, type Issue, ok, type Result } from '../core/index.ts';

/** Lets the person choose a text file; null when nothing was chosen. `accept` is the file input's filter. */
export function pickText(accept: string): Promise<Result<{ name: string; text: string } | null>> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('cancel', () => resolve(ok(null)));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      resolve(file ? readFile(file) : ok(null));
    });
    input.click();
  });
}

/** Hands bytes to the browser as a download of that name. */
export function saveDownload(name: string, data: Uint8Array<ArrayBuffer>): void {
  const address = URL.createObjectURL(new Blob([data]));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the blob after the click returns.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Text or bytes as bytes; text as UTF-8. */
export const bytesOf = (data: Uint8Array | string): Uint8Array<ArrayBuffer> =>
  typeof data === 'string' ? new TextEncoder().encode(data) : new Uint8Array(data);

/** Largest file that is read as text, bytes: 16 MB, as the host allows. */
const largestTextFile = 16 * 1024 * 1024;

/** Text of a file handed over by the browser; refused, before it is read, where it is too large. */
export async function readFile(file: File): Promise<Result<{ name: string; text: string }>> {
  const refused = (code: string, message: string, more: Partial<Issue>) =>
    fail({ path: [file.name], code, message, remedy: 'Choose another file.', ...more });
  if (file.size > largestTextFile) {
    return refused('file-too-large', 'The file is too large to be a project or a table.', {
      value: `${(file.size / 1024 / 1024).toFixed(1)} MB`,
      allowed: `up to ${largestTextFile / 1024 / 1024} MB`,
    });
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
    return ok({ name: file.name, text });
  } catch (fault) {
    return fault instanceof TypeError
      ? refused('file-not-text', 'The file is not UTF-8 text.', {
          remedy: 'Choose a project file (JSON), or a table saved as CSV in UTF-8.',
        })
      : refused('file-unreadable', 'The file could not be read.', {});
  }
}
