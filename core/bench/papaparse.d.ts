/** The part of papaparse that is used here; its published types would bring a host's types into core. */
declare module 'papaparse' {
  /** A row as read, and how far the text is read, in UTF-16 units. */
  interface StepResult {
    readonly data: readonly string[];
    readonly errors: readonly { readonly code: string; readonly message: string }[];
    readonly meta: { readonly cursor: number; readonly linebreak: string };
  }
  interface StepParser {
    abort(): void;
  }
  interface ParseConfig {
    readonly delimiter: string;
    readonly newline?: string;
    readonly preview?: number;
    readonly step: (result: StepResult, parser: StepParser) => void;
  }
  interface UnparseConfig {
    readonly delimiter: string;
    readonly newline: string;
  }
  const papa: {
    parse(text: string, config: ParseConfig): void;
    unparse(rows: readonly (readonly string[])[], config: UnparseConfig): string;
  };
  export default papa;
}
