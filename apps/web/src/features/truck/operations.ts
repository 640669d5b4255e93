import { graphql } from '#contracts';

export const keepRowMutation = graphql(`
  mutation KeepRow($planId: ID!, $truck: String!, $row: Int!) {
    keepRow(planId: $planId, waitMs: 800, truck: $truck, row: $row) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
  }
`);
export const keepLoadedMutation = graphql(`
  mutation KeepLoaded($planId: ID!) {
    keepLoaded(planId: $planId, waitMs: 800) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
  }
`);
export const keepPiecesMutation = graphql(`
  mutation KeepPieces($planId: ID!, $pieces: [String!]!) {
    keepPieces(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
  }
`);
export const letGoMutation = graphql(`
  mutation LetPiecesGo($planId: ID!, $pieces: [String!]) {
    letPiecesGo(planId: $planId, waitMs: 800, pieces: $pieces) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
  }
`);
export const waiveMutation = graphql(`
  mutation WaiveOrder($planId: ID!, $piece: String!, $reason: String!) {
    waiveOrder(planId: $planId, waitMs: 800, piece: $piece, reason: $reason) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
  }
`);
export const endWaiverMutation = graphql(`
  mutation EndWaiver($planId: ID!, $piece: String!) {
    endWaiver(planId: $planId, waitMs: 800, piece: $piece) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
  }
`);
export const takeCaseMutation = graphql(`
  mutation TakeCase($planId: ID!, $case: String!) {
    takeCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
  }
`);
export const leaveCaseMutation = graphql(`
  mutation LeaveCase($planId: ID!, $case: String!) {
    leaveCase(planId: $planId, waitMs: 800, case: $case) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
  }
`);
export const groupEndMutation = graphql(`
  mutation SetGroupEnd($planId: ID!, $group: String!, $end: String) {
    setGroupEnd(planId: $planId, waitMs: 800, group: $group, end: $end) { __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } } }
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
    swapRows(planId: $planId, waitMs: 800, truck: $truck, first: $first, second: $second, reason: $reason) {
      __typename ... on LoadingDone { draftId changes } ... on PlanningRefusal { code sentence reasons } ... on JobUnderWay { job { id state progress } }
    }
  }
`);

export const takePieceAlongMutation = graphql(`
  mutation TakePieceAlong($planId: ID!, $piece: String!) {
    takePieceAlong(planId: $planId, piece: $piece, waitMs: 800) {
      __typename
      ... on LoadingDone { draftId changes }
      ... on PlanningRefusal { code sentence reasons }
      ... on JobUnderWay { job { id state progress } }
    }
  }
`);

export const leavePieceMutation = graphql(`
  mutation LeavePiece($planId: ID!, $piece: String!, $reason: String!) {
    leavePiece(planId: $planId, piece: $piece, reason: $reason, waitMs: 800) {
      __typename
      ... on LoadingDone { draftId changes }
      ... on PlanningRefusal { code sentence reasons }
      ... on JobUnderWay { job { id state progress } }
    }
  }
`);
