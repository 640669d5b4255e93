import type { EntityManager } from 'typeorm';
import { type Tour, afterAct, noLoading } from '#tour-file';
import { LoadingActRow } from './rows.js';

/** The tour with what is wanted of the trucks of each show, act by act on top of what came with its file. */
export async function withLoading(manager: EntityManager, tour: Tour): Promise<Tour> {
  const acts = await manager.getRepository(LoadingActRow).find({ where: { tourId: tour.id }, order: { id: 'ASC' } });
  if (acts.length === 0) return tour;
  return {
    ...tour,
    shows: tour.shows.map((show) => {
      const own = acts.filter((each) => each.showId === show.id);
      return own.length === 0
        ? show
        : { ...show, loading: own.reduce((wanted, { act }) => afterAct(wanted, act), show.loading ?? noLoading) };
    }),
  };
}
