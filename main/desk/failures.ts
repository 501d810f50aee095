import { ValidationError } from '@orpc/contract';
import { ORPCError } from '@orpc/server';
import { LedgerError, type LedgerErrorCode } from '../ledger/errors.ts';

const codes: Partial<Record<LedgerErrorCode, 'NOT_FOUND' | 'CONFLICT' | 'BAD_REQUEST'>> = {
  'unknown-set': 'NOT_FOUND',
  'unknown-person': 'NOT_FOUND',
  'unknown-sheet': 'NOT_FOUND',
  'unknown-copy': 'NOT_FOUND',
  'unknown-drill': 'NOT_FOUND',
  'unknown-night': 'NOT_FOUND',
  conflict: 'CONFLICT',
  'version-not-next': 'CONFLICT',
  'bad-text': 'BAD_REQUEST',
};

/** What goes wrong inside the desk, as the typed refusals of the contract; anything unforeseen passes through. */
export function asFailure(error: unknown): unknown {
  if (error instanceof LedgerError) return ledgerFailure(error);
  if (error instanceof ORPCError && error.code === 'BAD_REQUEST' && error.cause instanceof ValidationError) {
    const issues = error.cause.issues.map((issue) => ({ path: pathOf(issue.path), message: issue.message }));
    const told = issues.map(({ path, message }) => (path === '' ? message : `${path}: ${message}`)).join('; ');
    return new ORPCError('BAD_REQUEST', { status: 400, message: `Not understood. ${told}.`, data: { issues } });
  }
  return error;
}

function ledgerFailure(error: LedgerError): ORPCError<string, unknown> {
  const { message, code: kind } = error;
  switch (codes[kind]) {
    case 'NOT_FOUND':
      return new ORPCError('NOT_FOUND', { status: 404, message, data: { what: kind.replace('unknown-', '') } });
    case 'CONFLICT':
      return new ORPCError('CONFLICT', { status: 409, message, data: { what: kind } });
    case 'BAD_REQUEST':
      return new ORPCError('BAD_REQUEST', { status: 400, message, data: { issues: [{ path: '', message }] } });
    default:
      return new ORPCError('STORAGE', { status: 507, message, data: { kind } });
  }
}

function pathOf(path: ValidationError['issues'][number]['path']): string {
  return (path ?? []).map((step) => String(typeof step === 'object' ? step.key : step)).join('.');
}
