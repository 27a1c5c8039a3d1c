/** The part of jsdom that tests use by hand; the package brings no types of its own. */
declare module 'jsdom' {
  export class JSDOM {
    constructor(text?: string, options?: { readonly contentType?: string });
    readonly window: Window & typeof globalThis;
  }
}
