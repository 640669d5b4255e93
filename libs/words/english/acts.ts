/** What was done, for operations that say nothing of their own. */
const acts: Readonly<Record<string, string>> = {
  changePassword: 'Chose another password.',
  'POST /api/tours/file': 'Took in a tour file.',
  'job improve': 'Looked on for a shorter list of box moves.',
  'job search': 'Looked longer for shorter loads.',
};

export const didBy = (operation: string): string => acts[operation] ?? `Saved (${operation}).`;

export const log = {
  program: 'Cartwright',
  outside: 'Changed in the database, not by Cartwright.',
  reworded: (lines: number): string => `Took the name of a person who left out of ${lines} ${lines === 1 ? 'line' : 'lines'} of this log.`,
};
