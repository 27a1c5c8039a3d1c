/** A sentence about the last act: saved, opened, refused. */

import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { setView, useView } from '../store/view.ts';
import { text } from '../strings.ts';

/** Good news leaves by itself after a while; bad news stays until it is dismissed. */
export function Notice() {
  const notice = useView((state) => state.notice);
  useEffect(() => {
    if (notice?.kind !== 'good') return;
    const timer = setTimeout(() => setView({ notice: null }), 5000);
    return () => clearTimeout(timer);
  }, [notice]);
  if (!notice) return null;
  return (
    <div className={`notice ${notice.kind}`} role={notice.kind === 'bad' ? 'alert' : 'status'}>
      <span aria-hidden="true">{notice.kind === 'bad' ? '▲' : '✓'}</span>
      <span>{notice.text}</span>
      <Button className="link" onPress={() => setView({ notice: null })}>
        {text.actions.close}
      </Button>
    </div>
  );
}
