/** The heavy libraries of hand-over modules in a worker: each is a file of its own, fetched when a module asks. */

import manifoldWasm from 'manifold-3d/manifold.wasm?url';
import type { HandoverTools } from '../../../core/index.ts';

async function solids(): Promise<unknown> {
  const { default: open } = await import('manifold-3d');
  const kit = await open({ locateFile: () => manifoldWasm });
  kit.setup();
  return kit;
}

async function pdf(): Promise<unknown> {
  const [{ default: document, registerStdFonts }, ...fonts] = await Promise.all([
    import('pdfkit'),
    import('pdfkit/standard-fonts/Helvetica'),
    import('pdfkit/standard-fonts/HelveticaBold'),
    import('pdfkit/standard-fonts/HelveticaOblique'),
    import('pdfkit/standard-fonts/Courier'),
  ]);
  registerStdFonts(...fonts.map((font) => font.default));
  return document;
}

/** Tools for one worker; a worker writes once, so nothing is kept. */
export const workerTools: HandoverTools = {
  solids,
  brep: async () => (await import('./brepKernel.ts')).brepKernel(),
  pdf,
};
