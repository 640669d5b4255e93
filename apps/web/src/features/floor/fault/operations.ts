import { graphql } from '#contracts';

export const faultSheetQuery = graphql(`
  query FaultSheet($itemId: ID!) {
    faultSheet(itemId: $itemId) {
      id kind model state count spare
      faults { kind what then pieces moment by }
      fliesIn { tourId showId show from load cart }
    }
  }
`);

export const openFaultsQuery = graphql(
  `query OpenFaults($planId: ID!) { openFaults(planId: $planId) { item kind what then pieces moment by } }`,
);

export const reportFault = graphql(`
  mutation ReportFault($itemId: ID!, $kind: String!, $what: String!, $then: String!, $pieces: Int) {
    reportFault(itemId: $itemId, kind: $kind, what: $what, then: $then, pieces: $pieces) { id }
  }
`);
