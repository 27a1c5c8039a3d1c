/** The method handbook: pages at the left, the page at the right, both found by their words. */

import { pages } from 'virtual:handbook';
import { type MouseEvent, useEffect, useRef, useState } from 'react';
import { Button, Input, Label, SearchField } from 'react-aria-components';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { setView } from '../store/view.ts';
import { handbookText as words } from '../strings/handbook.ts';
import { turnTo, useHandbook } from './store.ts';

/** Pages that have all the words. */
function found(sought: string) {
  const wanted = sought.toLowerCase().split(/\s+/).filter(Boolean);
  return pages.filter((page) => wanted.every((word) => page.words.includes(word)));
}

/** Links between pages turn the page; nothing in the handbook leads out of the program. */
function follow(event: MouseEvent<HTMLElement>): void {
  const link = (event.target as Element).closest('a');
  if (!link) return;
  event.preventDefault();
  turnTo((link.getAttribute('href') ?? '').replace(/\.md(?=#|$)/, ''));
}

function Pages({ open }: { readonly open: string }) {
  const [sought, setSought] = useState('');
  const shown = found(sought);
  const small = sought.trim().toLowerCase();
  return (
    <nav className="handbook-pages" aria-label={words.pages}>
      <SearchField value={sought} onChange={setSought}>
        <Label>{words.find}</Label>
        <Input />
      </SearchField>
      {shown.length === 0 && <p className="quiet">{words.none}</p>}
      <ul>
        {shown.map(({ id, title, headings }) => (
          <li key={id}>
            <Button className="link" aria-current={id === open && 'page'} onPress={() => turnTo(id)}>
              {title}
            </Button>
            {small.length > 1 &&
              headings
                .filter((heading) => heading.title.toLowerCase().includes(small))
                .map((heading) => (
                  <Button
                    key={heading.anchor}
                    className="link handbook-heading"
                    onPress={() => turnTo(`${id}#${heading.anchor}`)}
                  >
                    {heading.title}
                  </Button>
                ))}
          </li>
        ))}
      </ul>
    </nav>
  );
}

function Page() {
  const { page: id, heading, count } = useHandbook();
  const box = useRef<HTMLElement>(null);
  const page = pages.find((one) => one.id === id) ?? pages[0];
  // biome-ignore lint/correctness/useExhaustiveDependencies: the count asks again for the same place
  useEffect(() => {
    if (!box.current) return;
    const target = heading === null ? null : box.current.querySelector<HTMLElement>(`[id="handbook-${heading}"]`);
    if (!target) box.current.scrollTop = 0;
    target?.scrollIntoView();
    target?.focus({ preventScroll: true });
  }, [page, heading, count]);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: a link's click is what a key on it gives too
    <article
      ref={box}
      className="handbook-page"
      aria-label={page?.title}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a page that scrolls has to be reached by keys
      tabIndex={0}
      onClick={follow}
      // biome-ignore lint/security/noDangerouslySetInnerHtml: made from our own files at build time, raw HTML left out
      dangerouslySetInnerHTML={{ __html: page?.html ?? '' }}
    />
  );
}

/** The dialog. */
export function Handbook() {
  const { page, from } = useHandbook();
  return (
    <DialogFrame id="handbook" title={words.command} wide>
      {from !== 'none' && (
        <Button className="tool" onPress={() => setView({ dialog: from })}>
          {words.back}
        </Button>
      )}
      <div className="handbook">
        <Pages open={page} />
        <Page />
      </div>
    </DialogFrame>
  );
}
