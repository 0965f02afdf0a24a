import { Component, type ReactNode } from 'react';
import { FRAME } from '../text/english/window.ts';
import { Button } from '../ui/button.tsx';
import { StopNote } from '../ui/stop-note.tsx';

/** Holds a fault of one sheet there: the rest of the window, and all that is saved, stays. */
export class ErrorBoundary extends Component<{ readonly children: ReactNode }, { readonly isTorn: boolean }> {
  override state = { isTorn: false };

  /** React calls it when something below threw. */
  static getDerivedStateFromError(): { readonly isTorn: boolean } {
    return { isTorn: true };
  }

  override render(): ReactNode {
    if (!this.state.isTorn) return this.props.children;
    return (
      <main className="torn">
        <StopNote title={FRAME.faultTitle} advice={[FRAME.fault]}>
          <Button look="ink" onPress={() => this.setState({ isTorn: false })}>
            {FRAME.again}
          </Button>
        </StopNote>
      </main>
    );
  }
}
