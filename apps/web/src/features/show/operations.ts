import { graphql } from '#contracts';

export const showQuery = graphql(`
  query ShowPage($tourId: ID!, $showId: ID!) {
    showPage(tourId: $tourId, showId: $showId) {
      tourId showId name tourName
      released { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed plan ticks cartChecks { load checkedAt checkedBy } }
      draft { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed plan ticks cartChecks { load checkedAt checkedBy } }
      revisions { id state revision releasedAt releasedBy }
    }
  }
`);

export const makePlan = graphql(`
  mutation MakePackPlan($tourId: ID!, $showId: ID!) {
    makePackPlan(tourId: $tourId, showId: $showId, waitMs: 800) {
      __typename
      ... on PlanMade { planId }
      ... on PlanningRefusal { code sentence reasons }
      ... on JobUnderWay { job { id state progress } }
    }
  }
`);

export const releasePlan = graphql(`
  mutation ReleasePackPlan($planId: ID!, $despite: String) {
    releasePackPlan(planId: $planId, despite: $despite) {
      __typename
      ... on PlanView { id revision }
      ... on BookingRefusal { sentence clashes { item from to tour } }
      ... on StaleRefusal { sentence changed }
      ... on StopRefusal { sentence stops }
    }
  }
`);

export const differenceQuery = graphql(
  `query PlanDifference($from: ID!, $to: ID!) { planDifference(from: $from, to: $to) { sentences hangsChanged boxes { hang position from to } } }`,
);

export const tickMutation = graphql(
  `mutation Tick($planId: ID!, $what: String!, $done: Boolean!) { tick(planId: $planId, what: $what, done: $done) { id ticks } }`,
);

export const confirmMutation = graphql(`
  mutation ConfirmCart($planId: ID!, $load: String!, $serials: [String!]!) {
    confirmCart(planId: $planId, load: $load, serials: $serials) { agrees slots { slot expected found agrees sentence } }
  }
`);
