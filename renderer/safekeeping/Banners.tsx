/** The notices that stay, below the head of the window. */

import { Button } from 'react-aria-components';
import { safeText } from '../strings/safekeeping.ts';
import { text } from '../strings.ts';
import { type StayingNotice, unstay, useStaying } from './notices.ts';

function Banner({ notice }: { readonly notice: StayingNotice }) {
  const { subject, kind, remedy, acts = [] } = notice;
  return (
    <div className={`banner ${kind}`} role={kind === 'bad' ? 'alert' : 'status'} data-subject={subject}>
      <span aria-hidden="true">{kind === 'bad' ? '▲' : 'ℹ'}</span>
      <p>
        {notice.text}
        {remedy && <span className="banner-remedy"> {remedy}</span>}
      </p>
      <span className="banner-acts">
        {acts.map(({ label, perform }) => (
          <Button key={label} className="tool" onPress={() => void perform()}>
            {label}
          </Button>
        ))}
        <Button className="link" onPress={() => unstay(subject)}>
          {text.actions.close}
        </Button>
      </span>
    </div>
  );
}

/** All of them; nothing where there are none. */
export function Banners() {
  const notices = useStaying();
  if (notices.length === 0) return null;
  return (
    <section className="banners" aria-label={safeText.region}>
      {notices.map((notice) => (
        <Banner key={notice.subject} notice={notice} />
      ))}
    </section>
  );
}
