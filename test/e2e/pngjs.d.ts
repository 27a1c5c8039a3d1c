/** The part of pngjs that is used here; the package has no types. */
declare module 'pngjs' {
  export class PNG {
    constructor(options: { readonly width: number; readonly height: number });
    readonly width: number;
    readonly height: number;
    readonly data: Uint8Array;
    static readonly sync: {
      read(bytes: Uint8Array): PNG;
      write(picture: PNG, packing?: Readonly<Record<string, number>>): Uint8Array;
    };
  }
}
