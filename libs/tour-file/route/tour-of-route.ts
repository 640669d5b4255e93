import type { Design, Show, Tour } from '../shapes/index.js';
import { plainName } from '../sheet/index.js';
import { freeId } from './free-id.js';
import type { RouteRow } from './read-route.js';

/** What a route sheet does not say of a tour. */
export type TourOfRoute = Pick<Tour, 'name' | 'depot' | 'prepFrom' | 'returnTo' | 'jurisdictions'> & { readonly loadRule: string };

/** The designs that a sheet names and the tour has not yet, without hangs: they are hung once, for all their shows. */
export function designsOfRoute(rows: readonly RouteRow[], on: readonly Design[] = []): Design[] {
  const designs = [...on];
  for (const { design } of rows)
    if (design !== '' && !designs.some((each) => plainName(each.name) === plainName(design)))
      designs.push({
        id: freeId(
          design,
          designs.map((each) => each.id),
          'design',
        ),
        name: design,
        hangs: [],
      });
  return designs;
}

/** A show a row; shows of one name are numbered in their order. `taken`: ids that shows of the tour have, or had. */
export function showsOfRoute(
  rows: readonly RouteRow[],
  loadRule: string,
  designs: readonly Design[],
  taken: readonly string[] = [],
): Show[] {
  const ids = [...taken];
  const inOrder = [...rows].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.row - b.row));
  const named = new Map<string, number>();
  return inOrder.map(({ name, venue, timeZone, from, to, design }) => {
    const times = (named.get(plainName(name)) ?? 0) + 1;
    named.set(plainName(name), times);
    const called = times === 1 ? name : `${name} ${times}`;
    const id = freeId(called, ids, 'show');
    ids.push(id);
    const of = designs.find((each) => design !== '' && plainName(each.name) === plainName(design));
    const show: Show = { id, name: called, venue, timeZone, from, to, loadRule, personsBelow: true, hangs: of?.hangs ?? [] };
    return of ? { ...show, design: of.id } : show;
  });
}

/** A whole tour of a route sheet: its shows by day, its designs still to be hung. */
export function tourOfRoute(rows: readonly RouteRow[], { loadRule, ...said }: TourOfRoute, id: string): Tour {
  const designs = designsOfRoute(rows);
  return {
    id,
    ...said,
    visitDays: [],
    trucks: [],
    freight: [],
    spares: [],
    ...(designs.length > 0 ? { designs } : {}),
    shows: showsOfRoute(rows, loadRule, designs),
  };
}
