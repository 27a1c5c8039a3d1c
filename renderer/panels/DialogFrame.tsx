/** A dialog over the window: title, content, a way out. */

import { type ReactNode, useEffect, useRef } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { setView, useView, type ViewState } from '../store/view.ts';
import { text } from '../strings.ts';

/**
 * A button that goes away while it has the focus (one pressed, and replaced by what it brought) leaves the focus on
 * nothing: Escape would no longer close, and Tab would walk the window behind. Keys pressed then count for the dialog.
 */
function useLostFocus(open: boolean, close: () => void) {
  const room = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    const key = (event: KeyboardEvent) => {
      if (document.activeElement !== document.body || event.defaultPrevented) return;
      if (event.key === 'Escape') close();
      else if (event.key === 'Tab') room.current?.focus();
    };
    document.addEventListener('keydown', key);
    return () => document.removeEventListener('keydown', key);
  });
  return room;
}

/** Shown while the view says that this dialog is open. */
export function DialogFrame(props: {
  readonly id: ViewState['dialog'];
  readonly title: string;
  readonly wide?: boolean;
  readonly children: ReactNode;
}) {
  const open = useView((state) => state.dialog === props.id);
  const close = () => setView({ dialog: 'none' });
  const room = useLostFocus(open, close);
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      isDismissable
      onOpenChange={(next) => {
        if (!next) close();
      }}
    >
      <Modal className={props.wide ? 'modal wide' : 'modal'}>
        <Dialog className="dialog">
          <header>
            <Heading slot="title">{props.title}</Heading>
            <Button className="tool" onPress={close}>
              {text.actions.close}
            </Button>
          </header>
          <div className="dialog-body" ref={room} tabIndex={-1}>
            {props.children}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
