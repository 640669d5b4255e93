import { graphql } from '#contracts';

export const proposalsQuery = graphql(`
  query Proposals($after: String) {
    proposals(first: 50, after: $after) {
      totalCount
      newest
      pageInfo { hasNextPage endCursor }
      edges { node { id kind subject itemId sentence proposedBy proposedAt reason figures { name was wanted } } }
    }
  }
`);
export const howManyWaitQuery = graphql(`query HowManyWait { proposals(first: 1) { totalCount } }`);
export const waitsOfItemQuery = graphql(
  `query WaitsOfItem($id: ID!) { proposalsOfItem(itemId: $id) { id kind subject sentence proposedBy figures { name was wanted } } }`,
);
export const waitsOfCatalogueQuery = graphql(
  `query WaitsOfCatalogue { proposalsOfCatalogue { id kind subject sentence proposedBy figures { name was wanted } } }`,
);
export const answerMutation = graphql(
  `mutation AnswerProposals($ids: [ID!], $through: ID, $accept: Boolean!, $reason: String!) { answerProposals(ids: $ids, through: $through, accept: $accept, reason: $reason) }`,
);
