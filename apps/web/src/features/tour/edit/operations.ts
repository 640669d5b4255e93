import { graphql } from '#contracts';

export const tourQuery = graphql(
  `query Tour($id: ID!) { tour(id: $id) { id version tour removedShows { showId name from to removedOn removedBy revisions } } showStates(tourId: $id) { showId state revision stops looks } }`,
);
export const saveTour = graphql(
  `mutation SaveTour($tour: TourJson!, $expectedVersion: Int) { saveTour(tour: $tour, expectedVersion: $expectedVersion) { id version tour } }`,
);

export const rulesQuery = graphql(`query HouseRules { rules items(kind: "truck", first: 100) { edges { node { id model depot } } } }`);
export const toursQuery = graphql(`
  query Tours($after: String) {
    tours(first: 50, after: $after) { pageInfo { hasNextPage endCursor } edges { node { id name prepFrom returnTo shows } } }
  }
`);
