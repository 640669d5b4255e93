import { useQuery } from '@tanstack/react-query';
import { request } from '../../platform/request.js';
import { showQuery } from './operations.js';

/** The show with the heads of its plans; the plan in force is the released one, else the draft. */
export function useShow(tourId: string, showId: string) {
  return useQuery({
    queryKey: ['show', tourId, showId],
    queryFn: async () => {
      const { showPage } = await request(showQuery, { tourId, showId });
      return { ...showPage, inForce: showPage.released ?? showPage.draft ?? null };
    },
  });
}

export type ShowData = NonNullable<ReturnType<typeof useShow>['data']>;
export type PlanInForce = NonNullable<ShowData['inForce']>;
