/** The last net: a fault while drawing shows what happened and a way on, never an empty window. */

import { Component, type ReactNode } from 'react';
import { saveProjectAs } from './files.ts';
import { text } from './strings.ts';

interface Fault {
  readonly message: string | null;
}

/** Catches faults of everything inside. */
export class Boundary extends Component<{ readonly children: ReactNode }, Fault> {
  override state: Fault = { message: null };

  static getDerivedStateFromError(fault: unknown): Fault {
    return { message: fault instanceof Error ? fault.message : String(fault) };
  }

  override render(): ReactNode {
    if (this.state.message === null) return this.props.children;
    return (
      <main className="broken" role="alert">
        <h1>{text.broken.title}</h1>
        <p>{text.broken.help}</p>
        <p className="quiet">{this.state.message}</p>
        <p>
          <button type="button" className="tool" onClick={() => void saveProjectAs()}>
            {text.broken.saveCopy}
          </button>{' '}
          <button type="button" className="tool" onClick={() => this.setState({ message: null })}>
            {text.broken.again}
          </button>
        </p>
      </main>
    );
  }
}
