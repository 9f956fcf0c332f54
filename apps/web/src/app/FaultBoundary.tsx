import { Component, type ReactNode } from 'react';
import { words } from '../text/useWords.ts';

interface State {
  readonly fault: string | null;
}

/** A mistake of ours must not leave a blank page: it is named, and the saved work is one press away. */
export class FaultBoundary extends Component<{ readonly children: ReactNode }, State> {
  override state: State = { fault: null };

  static getDerivedStateFromError(error: unknown): State {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.fault === null) return this.props.children;
    const w = words();
    return (
      <main className="page-note" role="alert">
        <h1>{w.app.fault}</h1>
        <p>{w.app.faultDo}</p>
        <p className="about">{this.state.fault}</p>
        <button type="button" onClick={() => location.reload()}>
          {w.app.reload}
        </button>
      </main>
    );
  }
}
