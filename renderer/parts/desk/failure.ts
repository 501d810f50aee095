/** Why a call was refused or lost: the desk's own code and sentence, or `LINK` where no answer came. */
export interface Failure {
  readonly code: string;
  /** The desk's sentence; empty where it gave none. */
  readonly message: string;
  readonly data: unknown;
}

/** Reads whatever a call threw. The desk's refusals are errors with a code; anything else is a lost link. */
export function failureOf(error: unknown): Failure {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') {
    return { code: error.code, message: error.message, data: 'data' in error ? error.data : undefined };
  }
  return { code: 'LINK', message: error instanceof Error ? error.message : String(error), data: undefined };
}

/** The path of the database where the failure is one of storage, else null. */
export function storagePath(failure: Failure): string | null {
  const { data } = failure;
  if (failure.code !== 'STORAGE' || data === null || typeof data !== 'object' || !('path' in data)) return null;
  return typeof data.path === 'string' ? data.path : null;
}
