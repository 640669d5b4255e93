/** A decision that can be refused: expected failure is data, a throw is a bug. */
export type Result<T, E> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value });
export const refuse = <E>(error: E): Result<never, E> => ({ ok: false, error });
