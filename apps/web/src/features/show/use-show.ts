import { useQuery } from '@tanstack/react-query';
import { request } from '../../platform/request.js';
import { showQuery } from './operations.js';

/** The show with its plans; the plan in force is the released one, else the draft. `live`: read again every few seconds, for lists that several people tick. */
export function useShow(tourId: string, showId: string, live = false) {
  return useQuery({
    queryKey: ['show', tourId, showId],
    refetchInterval: live ? 8000 : false,
    queryFn: async () => {
      const { showPage } = await request(showQuery, { tourId, showId });
      return { ...showPage, inForce: showPage.released ?? showPage.draft ?? null };
    },
  });
}

export type ShowData = NonNullable<ReturnType<typeof useShow>['data']>;
export type PlanInForce = NonNullable<ShowData['inForce']>;
