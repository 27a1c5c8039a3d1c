/** The part of pdfkit's browser build that is used; the package ships no types. */

declare module 'pdfkit' {
  const document: unknown;
  export default document;
  /** Makes standard fonts known: the browser build has no files to read them from. */
  export function registerStdFonts(...fonts: readonly unknown[]): void;
}

declare module 'pdfkit/standard-fonts/*' {
  const font: unknown;
  export default font;
}
