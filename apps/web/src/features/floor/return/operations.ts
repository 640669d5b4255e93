import { graphql } from '#contracts';

export const returnSheetQuery = graphql(
  `query ReturnSheet($planId: ID!) { returnSheet(planId: $planId) { id kind model cart slot load back { moment by } seen { moment by with place } } }`,
);

export const returnCart = graphql(
  `mutation ReturnCart($planId: ID!, $cart: ID!, $serials: [ID!]!) { returnCart(planId: $planId, cart: $cart, serials: $serials) { id } }`,
);

export const returnItems = graphql(
  `mutation ReturnItems($planId: ID!, $items: [ID!]!) { returnItems(planId: $planId, items: $items) { id } }`,
);
