/** Puts text on the clipboard. */

/** The old way: a marked text field; it needs no permission, which the desktop shell grants to nothing. */
function copyMarked(text: string): boolean {
  const field = document.createElement('textarea');
  field.value = text;
  field.className = 'unseen';
  const focused = document.activeElement;
  document.body.append(field);
  field.select();
  const done = document.execCommand('copy');
  field.remove();
  if (focused instanceof HTMLElement) focused.focus();
  return done;
}

/** Copies; answers whether that worked. Must be called while a press is handled. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copyMarked(text);
  }
}
