/** The part of write-file-atomic that is used here; the package ships no types. */
declare module 'write-file-atomic' {
  /** Writes beside the target, flushes, then renames over it. */
  export default function writeFileAtomic(path: string, data: string | Uint8Array): Promise<void>;
}
