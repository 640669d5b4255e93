import { graphql } from '#contracts';

export const prepSheetQuery = graphql(
  `query PrepSheet($planId: ID!) { prepSheet(planId: $planId) { uses { id kind model count depot inside } records { item kind agrees data moment by } } }`,
);

export const benchTest = graphql(
  `mutation BenchTest($planId: ID!, $itemId: ID!, $failed: [String!]!, $remark: String!) { benchTest(planId: $planId, itemId: $itemId, failed: $failed, remark: $remark) }`,
);

export const readSplays = graphql(
  `mutation ReadSplays($planId: ID!, $load: String!, $splays: [Float!]!) { readSplays(planId: $planId, load: $load, splays: $splays) }`,
);

export const countTrunk = graphql(
  `mutation CountTrunk($planId: ID!, $trunk: ID!, $counts: [CountedInTrunk!]!) { countTrunk(planId: $planId, trunk: $trunk, counts: $counts) }`,
);
