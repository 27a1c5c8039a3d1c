/** The part of occt-import-js that the tests use; it publishes no types. */
declare module 'occt-import-js' {
  export interface ImportedMesh {
    readonly attributes: { readonly position: { readonly array: readonly number[] } };
    readonly index: { readonly array: readonly number[] };
  }
  interface Reader {
    ReadStepFile(
      bytes: Uint8Array,
      settings: Record<string, unknown>,
    ): { readonly success: boolean; readonly meshes: readonly ImportedMesh[] };
  }
  export default function occtImport(): Promise<Reader>;
}
