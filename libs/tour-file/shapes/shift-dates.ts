import { addDays } from '#kernel';
import type { TourFile } from './tour-file.js';

/** The same tour file with every day in it moved: a made-up tour can so start soon. */
export function shiftDates(file: TourFile, days: number): TourFile {
  return moved(file, days) as TourFile;
}

const dayText = /^\d{4}-\d{2}-\d{2}$/;

function moved(value: unknown, days: number): unknown {
  if (typeof value === 'string') return dayText.test(value) ? addDays(value, days) : value;
  if (Array.isArray(value)) return value.map((each) => moved(each, days));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, moved(each, days)]));
  return value;
}
