/** Small buttons that act on one entry of a list. */

import { Button } from 'react-aria-components';

/** One act: its name, sign and what it does. */
export interface EntryTool {
  readonly label: string;
  readonly sign: string;
  readonly disabled?: boolean;
  act(): void;
}

/** A row of acts on the entry called `entry`. */
export function EntryTools({ entry, tools }: { readonly entry: string; readonly tools: readonly EntryTool[] }) {
  return (
    <span className="entry-tools">
      {tools.map((tool) => (
        <Button
          key={tool.label}
          className="tiny"
          aria-label={`${tool.label}: ${entry}`}
          isDisabled={tool.disabled ?? false}
          onPress={tool.act}
        >
          <span title={tool.label}>{tool.sign}</span>
        </Button>
      ))}
    </span>
  );
}
