/** The last net: a fault while drawing shows what happened and a way on, never an empty window. */

import { Component, type ReactNode } from 'react';
import { saveProjectAs } from './files.ts';
import { Notice } from './panels/Notice.tsx';
import { Banners } from './safekeeping/Banners.tsx';
import { logFault } from './safekeeping/faultLog.ts';
import { projectStore, undo } from './store/project.ts';
import { safeText } from './strings/safekeeping.ts';
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

  override componentDidCatch(fault: unknown): void {
    logFault(fault, 'drawing the window');
  }

  private readonly again = () => this.setState({ message: null });

  override render(): ReactNode {
    if (this.state.message === null) return this.props.children;
    const last = projectStore.getState().history?.past.at(-1)?.label;
    const takeBack = () => {
      undo();
      this.again();
    };
    return (
      <main className="broken">
        <Banners />
        <div role="alert">
          <h1>{text.broken.title}</h1>
          <p>{text.broken.help}</p>
          <p className="quiet">{this.state.message}</p>
        </div>
        <p className="acts">
          <button type="button" className="tool" onClick={this.again}>
            {text.broken.again}
          </button>
          <button type="button" className="tool" onClick={() => void saveProjectAs()}>
            {text.broken.saveCopy}
          </button>
          {last !== undefined && (
            <button type="button" className="tool" onClick={takeBack}>
              {safeText.broken.takeBack(last)}
            </button>
          )}
        </p>
        <Notice />
      </main>
    );
  }
}
