/** The part of pdfkit that tests hand in; the package ships no types. */

declare module 'pdfkit' {
  const document: unknown;
  export default document;
}
