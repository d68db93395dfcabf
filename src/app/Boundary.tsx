import { Component, type ReactNode } from 'react';
import { Failed } from './Failed.tsx';

interface BoundaryProps {
  /** What stands in it, as the message names it. */
  name: string;
  onFault?: () => void;
  children: ReactNode;
}

interface BoundaryState {
  failed: boolean;
}

/** Keeps a fault inside one part of the page: a calm message and another try there, all else goes on. */
export class Boundary extends Component<BoundaryProps, BoundaryState> {
  override state: BoundaryState = { failed: false };

  static getDerivedStateFromError(): BoundaryState {
    return { failed: true };
  }

  override componentDidCatch(): void {
    this.props.onFault?.();
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children;
    return <Failed name={this.props.name} onRetry={() => this.setState({ failed: false })} />;
  }
}
