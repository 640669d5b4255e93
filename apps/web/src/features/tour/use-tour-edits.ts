import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { Tour } from '#tour-file';
import { type AnswerOf, Refused, request } from '../../platform/request.js';
import { saveTour, tourQuery } from './operations.js';

/** One small change of a tour; made twice it comes to the same. */
export type TourEdit = (tour: Tour) => Tour;

const isOlder = (fault: unknown): boolean => fault instanceof Refused && fault.faults.some((each) => each.field === 'expectedVersion');
const tries = 5;

/**
 * Small changes in quick succession: each is seen at once, they are saved one batch after the other on top of what is on file by then, and none is lost
 * because somebody else (or the one before it) was quicker.
 */
export function useTourEdits(onFile: Tour) {
  const client = useQueryClient();
  const queue = useRef<TourEdit[]>([]);
  const isGoing = useRef(false);
  const [waiting, setWaiting] = useState<readonly TourEdit[]>([]);
  const [error, setError] = useState<unknown>(null);
  const { id } = onFile;

  const saveAll = async (edits: readonly TourEdit[]): Promise<void> => {
    for (let attempt = 1; ; attempt++) {
      const read = attempt === 1 ? client.getQueryData<AnswerOf<typeof tourQuery>>(['tour', id]) : undefined;
      const { version, tour } = (read ?? (await request(tourQuery, { id }))).tour;
      try {
        const { saveTour: saved } = await request(saveTour, { tour: edits.reduce((so, edit) => edit(so), tour), expectedVersion: version });
        client.setQueryData<AnswerOf<typeof tourQuery>>(
          ['tour', id],
          (before) => before && { ...before, tour: { ...before.tour, ...saved } },
        );
        return;
      } catch (fault) {
        if (!isOlder(fault) || attempt === tries) throw fault;
      }
    }
  };
  const work = async (): Promise<void> => {
    if (isGoing.current) return;
    isGoing.current = true;
    while (queue.current.length > 0) {
      const edits = [...queue.current];
      await saveAll(edits).catch(setError);
      queue.current.splice(0, edits.length);
      setWaiting([...queue.current]);
    }
    isGoing.current = false;
    await client.invalidateQueries();
  };
  return {
    /** The tour with what waits to be saved. */
    tour: waiting.reduce((so, edit) => edit(so), onFile),
    isSaving: waiting.length > 0,
    error,
    change: (edit: TourEdit): void => {
      setError(null);
      queue.current.push(edit);
      setWaiting([...queue.current]);
      void work();
    },
  };
}
