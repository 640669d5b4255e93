import { databaseErrorOf } from '../faults/database-error.js';

/**
 * A fault as it is logged: kind, message, stack, and of a failed statement its SQLSTATE and constraint. Values that somebody typed stay out: the
 * parameters and details of statements, and what PostgreSQL quotes after a colon.
 */
export function withoutPersonalWords(fault: unknown): object {
  if (!(fault instanceof Error)) return { type: typeof fault, message: 'something that is no Error was thrown' };
  const failed = databaseErrorOf(fault);
  const clean = failed ? (text: string) => text.replaceAll(/: "[^\n]*"/g, ': "..."') : (text: string) => text;
  return {
    type: fault.name,
    message: clean(fault.message),
    stack: clean(fault.stack ?? ''),
    ...(failed && { code: failed.code, constraint: failed.constraint }),
    ...(fault.cause !== undefined && { cause: withoutPersonalWords(fault.cause) }),
  };
}
