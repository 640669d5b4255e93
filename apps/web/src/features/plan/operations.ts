import { graphql } from '#contracts';

/** The head of the show page: what its plans are, not what stands in them. */
export const showQuery = graphql(`
  query ShowPage($tourId: ID!, $showId: ID!) {
    showPage(tourId: $tourId, showId: $showId) {
      tourId showId name tourName
      released { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { code sentence } hangs trucks show { name venue from to number of } }
      draft { id state revision madeAt madeBy releasedAt releasedBy releasedDespite changed { code sentence } hangs trucks show { name venue from to number of } }
      revisions { id state revision releasedAt releasedBy }
    }
  }
`);

export const progressQuery = graphql(
  `query PlanProgress($id: ID!) { plan(id: $id) { ticks tickRemarks { what remark by } cartChecks { load checkedBy } } }`,
);
export const findingsQuery = graphql(
  `query PlanFindings($id: ID!) { plan(id: $id) { findings { code weight section subject date sentence fact } } }`,
);
export const cartsQuery = graphql(`query PlanCarts($id: ID!) { plan(id: $id) { carts } }`);
export const picksQuery = graphql(`query PlanPicks($id: ID!) { plan(id: $id) { picks } }`);
export const hangQuery = graphql(`query PlanHang($id: ID!, $hang: String!) { plan(id: $id) { hang(hang: $hang) } }`);
export const hardwareQuery = graphql(`query PlanHardware($id: ID!) { plan(id: $id) { hardware } }`);
export const truckHeadQuery = graphql(`query PlanTruckHead($id: ID!) { plan(id: $id) { truckHead } }`);
export const truckQuery = graphql(`query PlanTruck($id: ID!, $truck: String!) { plan(id: $id) { truck(truck: $truck) } }`);
export const dueQuery = graphql(`query PlanDue($id: ID!) { plan(id: $id) { due } }`);
export const wholePlanQuery = graphql(`query WholePlan($id: ID!) { plan(id: $id) { plan } }`);

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
  mutation ReleasePackPlan($planId: ID!, $despite: String, $countersign: CountersignInput) {
    releasePackPlan(planId: $planId, despite: $despite, countersign: $countersign) {
      __typename
      ... on PlanView { id revision }
      ... on BookingRefusal { code sentence clashes { item from to tour } }
      ... on StaleRefusal { code sentence changed { code sentence } }
      ... on StopRefusal { code sentence stops { code sentence } needsOfficer }
    }
  }
`);

export const differenceQuery = graphql(
  `query PlanDifference($from: ID!, $to: ID!) { planDifference(from: $from, to: $to) { sentences hangsChanged boxes { hang position from to } } }`,
);

export const tickMutation = graphql(
  `mutation Tick($planId: ID!, $what: String!, $done: Boolean!, $remark: String) { tick(planId: $planId, what: $what, done: $done, remark: $remark) { id } }`,
);

export const confirmMutation = graphql(`
  mutation ConfirmCart($planId: ID!, $load: String!, $serials: [String!]!) {
    confirmCart(planId: $planId, load: $load, serials: $serials) { agrees slots { slot expected found agrees code sentence } barred { itemId sentence } }
  }
`);
