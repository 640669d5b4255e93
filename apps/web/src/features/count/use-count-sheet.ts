import { useQuery } from '@tanstack/react-query';
import { request } from '../../platform/request.js';
import { countSheetQuery } from './operations.js';

/** What to count for a show, what was counted in its tour, and what it taught. */
export function useCountSheet(tourId: string, showId: string) {
  return useQuery({
    queryKey: ['counts', tourId, showId],
    queryFn: async () => (await request(countSheetQuery, { tourId, showId })).countSheet,
  });
}

export type Sheet = NonNullable<ReturnType<typeof useCountSheet>['data']>;
