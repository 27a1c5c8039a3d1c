/** A yes or no. */

/** A box with its words. */
export function CheckField(props: {
  readonly label: string;
  readonly checked: boolean;
  readonly disabled?: boolean;
  onChange(checked: boolean): void;
}) {
  return (
    <label className="check">
      <input
        type="checkbox"
        checked={props.checked}
        disabled={props.disabled}
        onChange={(event) => props.onChange(event.target.checked)}
      />{' '}
      {props.label}
    </label>
  );
}
