import { Component, type ReactNode } from 'react';
import { FormattedMessage } from 'react-intl';
import { Button } from '../ui/forms/Button.js';

/** A page's file that is no longer on the server: a newer version took its place. */
const isOldVersion = (error: Error): boolean => /dynamically imported module|module script failed|Importing a module/i.test(error.message);

interface Props {
  /** Another address is another try. */
  readonly address: string;
  readonly children: ReactNode;
}

interface State {
  readonly error: Error | null;
  readonly address: string;
}

/** Catches what a page throws while it is drawn, and says what to do. */
export class PageBoundary extends Component<Props, State> {
  override state: State = { error: null, address: this.props.address };

  static getDerivedStateFromError(error: Error): Partial<State> {
    return { error };
  }

  static getDerivedStateFromProps({ address }: Props, before: State): State | null {
    return address === before.address ? null : { error: null, address };
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (!error) return this.props.children;
    return (
      <div className="wrap">
        <div className="state failed" role="alert">
          <p>
            <FormattedMessage id={isOldVersion(error) ? 'parts.newVersion' : 'parts.broken'} />
          </p>
          <Button kind="main" onClick={() => window.location.reload()}>
            <FormattedMessage id="parts.reload" />
          </Button>
        </div>
      </div>
    );
  }
}
