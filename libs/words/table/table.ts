/** One sentence for each code of a closed union: a language without a code does not compile. */
export type Table<T extends { readonly code: string }> = { readonly [C in T['code']]: (each: Extract<T, { readonly code: C }>) => string };

/** The words of one thing out of its table. */
export const tell = <T extends { readonly code: string }>(table: Table<T>, each: T): string =>
  (table[each.code as T['code']] as (one: T) => string)(each);
