/** Why a figure could not be computed; the message says the same in plain words for the reader. */
export type ComputationErrorKind =
  | 'invalid-input'
  | 'no-data'
  | 'too-few-data'
  | 'one-category'
  | 'no-variation'
  | 'collinear'
  | 'separation'
  | 'no-convergence'
  | 'out-of-reach';

export type ComputationError = { readonly kind: ComputationErrorKind; readonly message: string };

/** What every sum of this folder returns when it can fail: a value, or a typed reason. Never NaN, never a throw. */
export type Computed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: ComputationError };

export function computed<T>(value: T): Computed<T> {
  return { ok: true, value };
}

export function failed(kind: ComputationErrorKind, message: string): Computed<never> {
  return { ok: false, error: { kind, message } };
}
