import type { RowChoiceFact } from '#trade';
import type { Words } from '../table/index.js';
import { plural } from './parts/index.js';

const millimetres = (value: number): string => `${Math.abs(value)} mm`;

/** What was done with the row after it was chosen. */
function afterwards({ movedRows, isLevelled, freeAheadMm }: RowChoiceFact): string {
  const moved =
    movedRows === 0 ? '' : ` Moved ${plural(Math.abs(movedRows), 'row')} toward the ${movedRows > 0 ? 'door' : 'nose'} for the axles.`;
  const levelled = isLevelled ? ' Its lanes were exchanged or moved across for the side balance.' : '';
  const free = freeAheadMm > 0 ? ` ${millimetres(freeAheadMm)} stay free ahead of it.` : '';
  return `${moved}${levelled}${free}`;
}

const lost = ({ lostMm }: RowChoiceFact): string => `${millimetres(lostMm)} of its depth carry nothing`;

export const rows: Words['rows'] = {
  kept: () => 'It stays where it stands because somebody wants it there.',
  only: (row) => `No other row of what had to go in next could stand here; ${lost(row)}.${afterwards(row)}`,
  'least-lost': (row) =>
    row.nextBestMm === 0
      ? `Of the rows that could stand here several lose equally little length; this is one of them: ${lost(row)}.${afterwards(row)}`
      : `Of all rows that could stand here it loses least length: ${lost(row)}, the next best would lose ${millimetres(row.nextBestMm ?? 0)} more.${afterwards(row)}`,
  'shorter-later': (row) =>
    `Another row would lose ${millimetres(row.nextBestMm ?? 0)} less here, but with it the whole load came out longer; ${lost(row)}.${afterwards(row)}`,
};
