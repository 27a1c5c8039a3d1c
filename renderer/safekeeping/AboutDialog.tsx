/** What the program is, its versions and licences, and where its log is. */

import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { coreVersion, issueText } from '../../core/index.ts';
import { announce } from '../announce.ts';
import { type AboutProgram, getBridge } from '../bridge.ts';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { Logo } from '../panels/Logo.tsx';
import { safeText } from '../strings/safekeeping.ts';
import { text } from '../strings.ts';

const words = safeText.about;

function Facts({ about }: { readonly about: AboutProgram }) {
  const rows = [
    [words.version, `${about.version} (${words.models} ${coreVersion})`],
    [words.licence, about.licence],
    [words.runsOn, about.runtime.map(({ name, version }) => `${name} ${version}`).join(', ')],
    ...(about.logFolder === null ? [] : [[words.log, about.logFolder]]),
  ];
  return (
    <dl className="about-facts">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function Content() {
  const [about, setAbout] = useState<AboutProgram | null>(null);
  useEffect(() => {
    getBridge()
      .readAbout()
      .then((read) => {
        if (read.ok) setAbout(read.value);
        else announce('bad', read.issues.map(issueText).join(' '));
      });
  }, []);
  if (!about) return null;
  return (
    <>
      <Facts about={about} />
      {getBridge().host === 'electron' && about.logFolder !== null && (
        <Button className="tool" onPress={() => getBridge().showLogFolder()}>
          {words.showLog}
        </Button>
      )}
      <h3 id="about-notices">{words.notices}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long text must be scrolled from the keyboard */}
      <section className="about-notices" aria-labelledby="about-notices" tabIndex={0}>
        {about.notices}
      </section>
    </>
  );
}

/** The dialog. */
export function AboutDialog() {
  return (
    <DialogFrame id="about" title={words.command}>
      <div className="about-head">
        <Logo />
        <div>
          <b>{text.appName}</b>
          <p>{words.what}</p>
        </div>
      </div>
      <p className="about-caution">▲ {words.caution}</p>
      <Content />
    </DialogFrame>
  );
}
