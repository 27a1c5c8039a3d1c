/** The browser's own ways to take a file in and hand one out, used where the host has no dialogs. */

/** Lets the person choose a text file; null when nothing was chosen. `accept` is the file input's filter. */
export function pickText(accept: string): Promise<{ name: string; text: string } | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('cancel', () => resolve(null));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      if (!file) return resolve(null);
      file.text().then(
        (text) => resolve({ name: file.name, text }),
        () => resolve(null),
      );
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
