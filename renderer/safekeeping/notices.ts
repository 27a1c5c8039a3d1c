/** Notices that stay until what they tell of is over: each says what is wrong and what can be done. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/** Something to press in a notice. */
interface NoticeAct {
  readonly label: string;
  perform(): unknown;
}

/** What a notice is about; there is at most one of each. */
export type NoticeSubject = 'journal' | 'save' | 'file' | 'held' | 'recovery' | 'drop' | 'recent' | 'start';

/** One notice. */
export interface StayingNotice {
  readonly subject: NoticeSubject;
  /** 'bad': work may be lost or was refused; 'note': something to know. */
  readonly kind: 'bad' | 'note';
  readonly text: string;
  readonly remedy?: string;
  readonly acts?: readonly NoticeAct[];
}

/** Notices in the order in which they arose. */
export const stayingStore = createStore<{ readonly notices: readonly StayingNotice[] }>(() => ({ notices: [] }));

/** Picks a part of them inside a view. */
export const useStaying = (): readonly StayingNotice[] => useStore(stayingStore, (state) => state.notices);

/** Shows a notice, in the place of an earlier one on the same subject. */
export function stay(notice: StayingNotice): void {
  stayingStore.setState(({ notices }) => {
    const at = notices.findIndex(({ subject }) => subject === notice.subject);
    return { notices: at < 0 ? [...notices, notice] : notices.map((one, index) => (index === at ? notice : one)) };
  });
}

/** Takes the notice on a subject away. */
export function unstay(subject: NoticeSubject): void {
  stayingStore.setState((state) =>
    state.notices.some((notice) => notice.subject === subject)
      ? { notices: state.notices.filter((notice) => notice.subject !== subject) }
      : state,
  );
}

/** The notice on a subject, if there is one. */
export const staying = (subject: NoticeSubject): StayingNotice | undefined =>
  stayingStore.getState().notices.find((notice) => notice.subject === subject);
