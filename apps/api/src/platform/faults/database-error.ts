import { QueryFailedError } from 'typeorm';

/** SQLSTATE and constraint of a failed statement; undefined for any other fault. */
export interface DatabaseError {
  readonly code: string;
  readonly constraint: string | undefined;
  readonly detail: string | undefined;
}

export function databaseErrorOf(fault: unknown): DatabaseError | undefined {
  if (!(fault instanceof QueryFailedError)) return undefined;
  const { code, constraint, detail } = fault.driverError as { code?: string; constraint?: string; detail?: string };
  return code === undefined ? undefined : { code, constraint, detail };
}
