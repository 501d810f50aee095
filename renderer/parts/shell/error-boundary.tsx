import { Component, type ErrorInfo, type ReactNode } from 'react';
import { Button } from '../controls/button.tsx';
import { useWords } from '../words/words.tsx';
import styles from './error-boundary.module.css';

interface Props {
  readonly children: ReactNode;
  /** Another key clears the error: the user has gone to another screen. */
  readonly place: string;
}

interface State {
  readonly error: unknown;
  readonly place: string;
}

/** Keeps one broken screen from taking the program with it. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { error: undefined, place: this.props.place };

  static getDerivedStateFromError(error: unknown): Partial<State> {
    return { error: error ?? new Error('a screen threw nothing') };
  }

  static getDerivedStateFromProps(props: Props, state: State): Partial<State> | null {
    return props.place === state.place ? null : { error: undefined, place: props.place };
  }

  override componentDidCatch(error: unknown, info: ErrorInfo): void {
    console.error(error, info.componentStack);
  }

  override render(): ReactNode {
    if (this.state.error === undefined) return this.props.children;
    return <Broken error={this.state.error} onAgain={() => this.setState({ error: undefined })} />;
  }
}

function Broken({ error, onAgain }: { error: unknown; onAgain: () => void }) {
  const words = useWords().shell;
  return (
    <section className={styles.broken} role="alert">
      <h1>{words.broken}</h1>
      <p>{words.brokenAdvice}</p>
      <div className={styles.actions}>
        <Button onClick={onAgain}>{words.brokenAgain}</Button>
        <Button onClick={() => window.location.reload()}>{words.reload}</Button>
      </div>
      <details>
        <summary>{words.details}</summary>
        <pre>{error instanceof Error ? (error.stack ?? error.message) : String(error)}</pre>
      </details>
    </section>
  );
}
