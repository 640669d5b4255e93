import { useEffect, useRef } from 'react';
import type { Tour } from '#tour-file';
import { Clashed, type ReadTour, saveOver } from './save-over.js';
import { houseTours } from './use-tour-edits.js';

/**
 * Saves a form of a tour over what others saved since it was begun. `isDirty`: something is typed; the tour as it was read before that is what the form
 * began on. After a clash both values are shown, and who saves once more has decided.
 */
export function useTourSave(read: ReadTour, isDirty: boolean) {
  const begunOn = useRef(read);
  useEffect(() => {
    if (!isDirty && read.version > begunOn.current.version) begunOn.current = read;
  }, [read, isDirty]);
  return async (change: (tour: Tour) => Tour): Promise<ReadTour> => {
    try {
      const saved = await saveOver(houseTours, begunOn.current, change(begunOn.current.tour));
      begunOn.current = saved;
      return saved;
    } catch (fault) {
      if (fault instanceof Clashed) begunOn.current = fault.now;
      throw fault;
    }
  };
}
