import { Component, Suspense, type ReactNode } from 'react';
import { PartMissing } from '../../state/fetchPart.ts';
import { MissingPart } from './MissingPart.tsx';

export interface FetchedProps {
  /** What stands here while it is fetched. */
  readonly waiting?: ReactNode;
  readonly children: ReactNode;
}

interface FetchedState {
  readonly failed: 'not' | 'missing' | 'broken';
}

/** Holds a part of the page that is fetched when it is needed. Where that fails, or it breaks, the rest stays as it is. */
export class Fetched extends Component<FetchedProps, FetchedState> {
  static getDerivedStateFromError(error: unknown): FetchedState {
    return { failed: error instanceof PartMissing ? 'missing' : 'broken' };
  }

  override state: FetchedState = { failed: 'not' };

  override render(): ReactNode {
    const { failed } = this.state;
    if (failed !== 'not')
      return (
        <MissingPart
          why={failed}
          onTryAgain={() => {
            this.setState({ failed: 'not' });
          }}
        />
      );
    return <Suspense fallback={this.props.waiting}>{this.props.children}</Suspense>;
  }
}
