/** Catches faults of the 3D view, so that the rest of the window goes on. */

import { Component, type ReactNode } from 'react';
import { NoScene } from './NoScene.tsx';

/** Shows the side drawing instead of a broken view. */
export class SceneBoundary extends Component<{ readonly children: ReactNode }, { readonly broken: boolean }> {
  override state = { broken: false };

  static getDerivedStateFromError(): { broken: boolean } {
    return { broken: true };
  }

  override render(): ReactNode {
    return this.state.broken ? <NoScene retry={() => this.setState({ broken: false })} /> : this.props.children;
  }
}
