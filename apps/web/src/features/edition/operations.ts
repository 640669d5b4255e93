import { graphql } from '#contracts';

export const proposalsQuery = graphql(`
  query Proposals($after: String) {
    proposals(first: 50, after: $after) {
      totalCount
      newest
      holdsOwn
      pageInfo { hasNextPage endCursor }
      edges { node { id kind subject itemId sentence proposedBy proposedAt reason isOwn figures { name was wanted } } }
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
export const answerAllMutation = graphql(
  `mutation AnswerAllProposals($through: ID!, $accept: Boolean!, $reason: String!) { answerAllProposals(through: $through, accept: $accept, reason: $reason) { id } }`,
);
export const answeringQuery = graphql(
  `query ProposalAnswering { latestProposalAnswering { id accept reason askedBy isGoing total answered looked leftBecause seconds } }`,
);
