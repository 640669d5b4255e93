import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { Tour } from '#tour-file';
import { type AnswerOf, request } from '../../../platform/request.js';
import { saveTour, tourQuery } from './operations.js';
import type { ReadTour, TourStore } from './save-over.js';
import { type TourEdit, TourEdits } from './tour-edits.js';

export type { TourEdit } from './tour-edits.js';

/** The tours of the house. */
export const houseTours: TourStore = {
  read: async (id) => (await request(tourQuery, { id })).tour,
  save: async (tour, expectedVersion) => (await request(saveTour, { tour, expectedVersion })).saveTour,
};

/** Small changes of a tour, made as fast as one likes. */
export function useTourEdits(onFile: ReadTour) {
  const client = useQueryClient();
  const [waiting, setWaiting] = useState<readonly TourEdit[]>([]);
  const [error, setError] = useState<unknown>(null);
  const { id } = onFile.tour;
  const [edits] = useState(
    () =>
      new TourEdits(
        houseTours,
        onFile,
        (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)),
        ({ waiting: left, saved, refused }) => {
          setWaiting(left);
          if (refused !== undefined) setError(refused);
          if (saved)
            client.setQueryData<AnswerOf<typeof tourQuery>>(
              ['tour', id],
              (before) => before && { ...before, tour: { ...before.tour, ...saved } },
            );
          if (left.length === 0) void client.invalidateQueries();
        },
      ),
  );
  useEffect(() => edits.heard(onFile), [edits, onFile]);
  const isSaving = waiting.length > 0;
  useEffect(() => {
    if (!isSaving) return undefined;
    const ask = (event: BeforeUnloadEvent): void => event.preventDefault();
    addEventListener('beforeunload', ask);
    return () => removeEventListener('beforeunload', ask);
  }, [isSaving]);
  return {
    /** The tour with what waits to be saved. */
    tour: waiting.reduce<Tour>((so, edit) => edit(so), onFile.tour),
    isSaving,
    error,
    change: (edit: TourEdit): void => {
      setError(null);
      void edits.add(edit);
    },
  };
}
