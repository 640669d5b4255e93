import { graphql } from '#contracts';

export const countSheetQuery = graphql(`
  query CountSheet($tourId: ID!, $showId: ID!) {
    countSheet(tourId: $tourId, showId: $showId) {
      tourId showId name tourName notCountedBefore { showId name }
      lines {
        key item fitted spares
        learned { priorMean losses uses posteriorMean sparesByPriorAlone }
        counted { id sent returned damaged losses countedBy countedAt }
      }
      records { id key shows sent returned damaged losses uses corrects reason countedBy countedAt inForce }
    }
  }
`);

export const recordCounts = graphql(`
  mutation RecordCounts($tourId: ID!, $showIds: [ID!]!, $lines: [CountInput!]!) {
    recordCounts(tourId: $tourId, showIds: $showIds, lines: $lines) {
      __typename
      ... on CountSheet { showId }
      ... on CountRefusal { sentence }
    }
  }
`);

export const correctCount = graphql(`
  mutation CorrectCount($id: ID!, $sent: Int!, $returned: Int!, $damaged: Int!, $reason: String!) {
    correctCount(id: $id, sent: $sent, returned: $returned, damaged: $damaged, reason: $reason) { showId }
  }
`);

export const takeCountBack = graphql(
  `mutation TakeCountBack($id: ID!, $reason: String!) { takeCountBack(id: $id, reason: $reason) { showId } }`,
);
