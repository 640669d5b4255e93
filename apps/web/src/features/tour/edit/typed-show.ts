import { z } from 'zod';
import { day, filled } from '../../../ui/typed.js';

/** A new show as it is typed. */
export const typedShow = z.object({
  show: filled('a name'),
  venue: filled('a name'),
  timeZone: filled('a zone'),
  from: day,
  to: day,
});

/** Where a fault of a show that is being made belongs. */
export const fieldOfNewShow = (path: string): string | undefined => {
  const part = /shows\[\d+\]\.(\w+)$/.exec(path)?.[1];
  return part === 'name' || part === 'id' ? 'show' : part;
};
