import { graphql } from '#contracts';

export const doMove = graphql(
  `mutation DoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { doMove(planId: $planId, box: $box, from: $from, to: $to) }`,
);

export const undoMove = graphql(
  `mutation UndoMove($planId: ID!, $box: String!, $from: String!, $to: String!) { undoMove(planId: $planId, box: $box, from: $from, to: $to) }`,
);

export const workListQuery = graphql(`query WorkList($planId: ID!) { workList(planId: $planId) }`);

export const setStackMutation = graphql(
  `mutation SetStack($cart: ID!, $serials: [String!]!) { setStack(cart: $cart, serials: $serials) { summary { id } } }`,
);
