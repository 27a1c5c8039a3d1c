/** A dialog over the window: title, content, a way out. */

import type { ReactNode } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { setView, useView, type ViewState } from '../store/view.ts';
import { text } from '../strings.ts';

/** Shown while the view says that this dialog is open. */
export function DialogFrame(props: {
  readonly id: ViewState['dialog'];
  readonly title: string;
  readonly wide?: boolean;
  readonly children: ReactNode;
}) {
  const open = useView((state) => state.dialog === props.id);
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      isDismissable
      onOpenChange={(next) => {
        if (!next) setView({ dialog: 'none' });
      }}
    >
      <Modal className={props.wide ? 'modal wide' : 'modal'}>
        <Dialog className="dialog">
          <header>
            <Heading slot="title">{props.title}</Heading>
            <Button className="tool" onPress={() => setView({ dialog: 'none' })}>
              {text.actions.close}
            </Button>
          </header>
          <div className="dialog-body">{props.children}</div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
