import type { DrillRun, Phase } from './run/drill-run.ts';

/**
 * For tests only: what a scripted judge must know to err on purpose. It stands on the window while, and only while, the
 * browser's storage of this origin holds `plumbline-test-eye` = `on`, which nothing in the program sets.
 */
export interface EyeHook {
  readonly phase: () => Phase['kind'];
  /** Trials shown so far with what is truly broken, and whether they are called; of a stream all of them from its beginning. */
  readonly trials: () => readonly TrueTrial[];
  /** Time stamp at which the rep, or the stream, begins; null while neither runs. */
  readonly startAt: () => number | null;
}

interface TrueTrial {
  readonly broken: readonly string[];
  readonly margins: Readonly<Record<string, number | null>>;
  readonly called: boolean;
  readonly seenMs: number;
}

declare global {
  interface Window {
    plumblineTestEye?: EyeHook;
  }
}

function asked(): boolean {
  try {
    return localStorage.getItem('plumbline-test-eye') === 'on';
  } catch {
    return false;
  }
}

/** @returns what takes the hook away again */
export function exposeToTests(run: DrillRun): () => void {
  if (!asked()) return () => {};
  window.plumblineTestEye = {
    phase: () => run.phase.get().kind,
    trials: () =>
      run.log.state
        .get()
        .trials.filter((trial) => !trial.spoilt)
        .map(({ broken, margins, call, seenMs }) => ({ broken, margins, called: call !== null, seenMs })),
    startAt: () => {
      const phase = run.phase.get();
      return phase.kind === 'rep' || phase.kind === 'stream' ? phase.startAt : null;
    },
  };
  return () => {
    delete window.plumblineTestEye;
  };
}
