import { graphql } from '#contracts';

export const doMove = graphql(
  `mutation DoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { doMove(planId: $planId, box: $box, from: $from, to: $to) }`,
);
