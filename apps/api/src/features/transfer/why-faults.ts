import { type BadInput, shownText } from '#kernel';
import type { CsvFault } from '#tour-file';

/** A reason that is wanted is asked for beside the row; no column of a file is called so. */
export const whyFaults = (faults: readonly BadInput[], row: number): CsvFault[] =>
  faults.map(({ value, wanted }) => ({ row: Math.max(2, row), column: 'why', value: shownText(value), wanted }));
