import { useRef, useState } from 'react';
import { Refused } from '../../platform/request.js';

/**
 * An edit keeps what stood on file when the first letter was typed, whatever others write meanwhile; once it is saved, the form follows what is on file
 * again. A field that somebody else wrote has been shown with the refusal: whoever saves again decides over it.
 */
export function useEditBegun<T extends object>(onFile: T) {
  const [begunOn, setBegunOn] = useState<T | null>(null);
  const decided = useRef<Record<string, unknown>>({});
  return {
    from: begunOn ?? onFile,
    begin: () => setBegunOn((was) => was ?? onFile),
    end: () => {
      decided.current = {};
      setBegunOn(null);
    },
    /** What this person read, with what a refusal has told since. */
    read: (was: object): object => ({ ...was, ...decided.current }),
    hear: (fault: unknown) => {
      for (const { field, onFile: now } of fault instanceof Refused ? fault.faults : [])
        if (field !== undefined && now !== undefined) decided.current[field] = now;
    },
  };
}

export type EditBegun<T extends object> = ReturnType<typeof useEditBegun<T>>;
