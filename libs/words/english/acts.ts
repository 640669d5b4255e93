/** What was done, for operations that say nothing of their own. */
const acts: Readonly<Record<string, string>> = {};

export const didBy = (operation: string): string => acts[operation] ?? `Saved (${operation}).`;
