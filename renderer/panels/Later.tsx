/** A dialog that the first picture does not need: its code is fetched when it is opened first, and then it stays. */

import { type ComponentType, Suspense, useState } from 'react';
import { useView, type ViewState } from '../store/view.ts';

/** Holds nothing until the view asks for the dialog `id`; what runs in it goes on while it is closed. */
export function Later({ id, of: Fetched }: { readonly id: ViewState['dialog']; readonly of: ComponentType }) {
  const open = useView((state) => state.dialog === id);
  const [wanted, setWanted] = useState(false);
  if (open && !wanted) setWanted(true);
  if (!open && !wanted) return null;
  return (
    <Suspense fallback={null}>
      <Fetched />
    </Suspense>
  );
}
