import type { Tour } from '#tour-file';

/** Countries of the venues on record of a tour's shows (`tour`). SQL. */
export const countriesOfVenues = `ARRAY(SELECT DISTINCT venue.country FROM show_venue JOIN venue ON venue.id = show_venue.venue_id
  WHERE tour_id = tour.id AND venue.country IS NOT NULL AND tour.data->'shows' @> jsonb_build_array(jsonb_build_object('id', show_id)) ORDER BY venue.country)`;

/** Where a venue on record says that it is, its law holds, whatever the tour names. */
export const withCountries = ({ data, countries }: { readonly data: Tour; readonly countries: readonly string[] }): Tour => ({
  ...data,
  jurisdictions: [...new Set([...data.jurisdictions, ...countries])],
});
