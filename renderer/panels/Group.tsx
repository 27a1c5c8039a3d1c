/** A titled group of rows. */

import type { ReactNode } from 'react';
import { NumberField } from '../fields/NumberField.tsx';
import type { FieldSpec } from '../fields/spec.ts';
import type { Path } from '../store/path.ts';
import { pathBelow } from './desk.ts';

/** Heading and content; `aside` stands at the heading's right. */
export function Group(props: { readonly title: string; readonly aside?: ReactNode; readonly children: ReactNode }) {
  return (
    <section className="group">
      <header>
        <h3>{props.title}</h3>
        {props.aside}
      </header>
      {props.children}
    </section>
  );
}

/** One number row per spec, below a root. */
export function Fields(props: { readonly root: Path; readonly specs: readonly FieldSpec[]; readonly locked: boolean }) {
  return props.specs.map((spec) => (
    <NumberField key={spec.key} path={pathBelow(props.root, spec.key)} spec={spec} disabled={props.locked} />
  ));
}
