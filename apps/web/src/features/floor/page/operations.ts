import { graphql } from '#contracts';

export const floorCodeQuery = graphql(
  `query FloorCode($planId: ID!, $code: String!) { floorCode(planId: $planId, code: $code) { id kind model count whyNot wantedSerials } }`,
);
