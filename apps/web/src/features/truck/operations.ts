import { graphql } from '#contracts';

export const keepRowMutation = graphql(`
  mutation KeepRow($planId: ID!, $truck: String!, $row: Int!) {
    keepRow(planId: $planId, truck: $truck, row: $row) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const keepLoadedMutation = graphql(`
  mutation KeepLoaded($planId: ID!) {
    keepLoaded(planId: $planId) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const keepPiecesMutation = graphql(`
  mutation KeepPieces($planId: ID!, $pieces: [String!]!) {
    keepPieces(planId: $planId, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const letGoMutation = graphql(`
  mutation LetPiecesGo($planId: ID!, $pieces: [String!]) {
    letPiecesGo(planId: $planId, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const waiveMutation = graphql(`
  mutation WaiveOrder($planId: ID!, $piece: String!, $reason: String!) {
    waiveOrder(planId: $planId, piece: $piece, reason: $reason) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const endWaiverMutation = graphql(`
  mutation EndWaiver($planId: ID!, $piece: String!) {
    endWaiver(planId: $planId, piece: $piece) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const takeCaseMutation = graphql(`
  mutation TakeCase($planId: ID!, $case: String!) {
    takeCase(planId: $planId, case: $case) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const leaveCaseMutation = graphql(`
  mutation LeaveCase($planId: ID!, $case: String!) {
    leaveCase(planId: $planId, case: $case) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const groupEndMutation = graphql(`
  mutation SetGroupEnd($planId: ID!, $group: String!, $end: String) {
    setGroupEnd(planId: $planId, group: $group, end: $end) { __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons } }
  }
`);
export const rowSwapQuery = graphql(`
  query RowSwap($planId: ID!, $truck: String!, $first: Int!, $second: Int!) {
    rowSwap(planId: $planId, truck: $truck, first: $first, second: $second) {
      first second sideBeforeMm sideAfterMm axles { axle beforeKg afterKg limitKg } breaches { piece mayBeWaived sentence }
    }
  }
`);
export const swapRowsMutation = graphql(`
  mutation SwapRows($planId: ID!, $truck: String!, $first: Int!, $second: Int!, $reason: String) {
    swapRows(planId: $planId, truck: $truck, first: $first, second: $second, reason: $reason) {
      __typename ... on LoadingDone { draftId changes } ... on LoadingRefusal { sentence reasons }
    }
  }
`);
