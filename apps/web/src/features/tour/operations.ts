import { graphql } from '#contracts';

export const tourQuery = graphql(
  `query Tour($id: ID!) { tour(id: $id) { id version tour } showStates(tourId: $id) { showId state revision stops looks } }`,
);
export const saveTour = graphql(
  `mutation SaveTour($tour: TourJson!, $expectedVersion: Int) { saveTour(tour: $tour, expectedVersion: $expectedVersion) { id version tour } }`,
);
