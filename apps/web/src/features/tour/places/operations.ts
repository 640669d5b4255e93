import { graphql } from '#contracts';

export const tourPlacesQuery = graphql(`
  query TourPlaces($tourId: ID!) {
    tourPlaces(tourId: $tourId) {
      places { place hasRules judgedBy decisions { rulesOf because decidedBy decidedAt } }
      ruled
      home
    }
  }
`);
export const answerPlace = graphql(`
  mutation AnswerPlace($tourId: ID!, $place: String!, $rulesOf: String, $reason: String!) {
    answerPlace(tourId: $tourId, place: $place, rulesOf: $rulesOf, reason: $reason) { home }
  }
`);
