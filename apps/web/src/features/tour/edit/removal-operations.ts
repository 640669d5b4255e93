import { graphql } from '#contracts';

export const takenAlongQuery = graphql(`
  query TakenAlong($tourId: ID!, $showId: ID) { takenAlong(tourId: $tourId, showId: $showId) { shows hangs boxes drafts inForce revisions givenBack } }
`);
export const removeShow = graphql(`
  mutation RemoveShow($tourId: ID!, $showId: ID!, $expectedVersion: Int!) { removeShow(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }
`);
export const putShowBack = graphql(`
  mutation PutShowBack($tourId: ID!, $showId: ID!, $expectedVersion: Int!) { putShowBack(tourId: $tourId, showId: $showId, expectedVersion: $expectedVersion) { id version } }
`);
export const removeTour = graphql(`
  mutation RemoveTour($tourId: ID!, $expectedVersion: Int!) { removeTour(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }
`);
export const putTourBack = graphql(`
  mutation PutTourBack($tourId: ID!, $expectedVersion: Int!) { putTourBack(tourId: $tourId, expectedVersion: $expectedVersion) { id version } }
`);
export const removedToursQuery = graphql(`
  query RemovedTours { removedTours { id name prepFrom returnTo version removedOn removedBy revisions } }
`);
export const chooseVenue = graphql(`
  mutation ChooseVenue($tourId: ID!, $showId: ID!, $venueId: ID) { chooseVenue(tourId: $tourId, showId: $showId, venueId: $venueId) }
`);
export const showVenueQuery = graphql(`
  query ShowVenue($tourId: ID!, $showId: ID!) { venues { id venue } venueOfShow(tourId: $tourId, showId: $showId) { id } }
`);
