/** Acts of a dialog that go by typed numbers: a refused text leaves the number before it standing, which is not what is read. */

/**
 * Puts the focus into the first number of the same group or dialog whose text is refused, where its reason stands.
 * @param target what was pressed
 * @returns whether there is one, so that the act is to be left undone
 */
export function goToRefused(target: Element): boolean {
  const around = target.closest('fieldset, [role=dialog]') ?? target.ownerDocument;
  const field = around.querySelector<HTMLElement>('.typed-number [aria-invalid=true]');
  field?.focus();
  return field !== null;
}
