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

/** No SQLSTATE (the socket ended), class 08 (connection exception), 57P01 to 57P03 (the server goes down, crashed, or is not up yet). */
export function isConnectionLost(fault: unknown): boolean {
  const isOfStatement = fault instanceof QueryFailedError;
  const { code, message = '' } = ((isOfStatement ? fault.driverError : fault) ?? {}) as { code?: unknown; message?: string };
  if (typeof code === 'string') return /^(08...|57P0[123]|ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT)$/.test(code);
  return (
    isOfStatement ||
    /^(timeout exceeded when trying to connect|Connection terminated|Client has encountered a connection error)/.test(message)
  );
}

/** Class 53, what the server has too little of: 53100 disk, 53200 memory, 53300 connections. */
export const isShortOf = (fault: unknown): 'disk' | 'memory or connections' | undefined => {
  const code = databaseErrorOf(fault)?.code ?? (fault as { code?: unknown } | null | undefined)?.code;
  if (code === '53100') return 'disk';
  return typeof code === 'string' && /^53...$/.test(code) ? 'memory or connections' : undefined;
};
