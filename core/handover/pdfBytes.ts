/** The bytes of a PDF document. */

/** The part of a document that tells what it writes. */
interface Written {
  on(event: 'data', hear: (chunk: Uint8Array) => void): unknown;
  on(event: 'end', hear: () => void): unknown;
  on(event: 'error', hear: (error: unknown) => void): unknown;
}

/** What a document writes, joined when it has ended. */
export function collected(pdf: Written): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk) => chunks.push(chunk));
    pdf.on('error', reject);
    pdf.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });
}
