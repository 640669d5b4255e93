import type { Design, Show, Tour } from '../shapes/index.js';

/** The show with the hangs of the design, all of them as they are there; `undefined`: it follows none, its hangs stay as they are. */
export function followDesign(show: Show, design: Design | undefined): Show {
  const { design: _before, ...rest } = show;
  return design ? { ...rest, design: design.id, hangs: design.hangs } : rest;
}

/** The tour with the hangs of one of its shows kept as a design, which that show follows from then on. */
export function keepAsDesign(tour: Tour, showId: string, design: Pick<Design, 'id' | 'name'>): Tour {
  const show = tour.shows.find((each) => each.id === showId);
  if (!show) return tour;
  return {
    ...tour,
    designs: [...(tour.designs ?? []), { ...design, hangs: show.hangs }],
    shows: tour.shows.map((each) => (each === show ? { ...each, design: design.id } : each)),
  };
}
