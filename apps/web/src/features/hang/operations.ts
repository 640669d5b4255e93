import { graphql } from '#contracts';

export const addReading = graphql(`
  mutation AddLoadReading($planId: ID!, $hang: String!, $hole: String!, $place: String!, $readingKg: Float!) {
    addLoadReading(planId: $planId, hang: $hang, hole: $hole, place: $place, readingKg: $readingKg) { readings { id } }
  }
`);
