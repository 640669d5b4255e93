import { graphql } from '#contracts';

export const visitsQuery = graphql(`
  query Visits($from: String!, $to: String!, $depot: String) {
    depots
    visits(from: $from, to: $to, depot: $depot) { id onDay depot placeName state remark entered version list }
    showsInSeason(from: $from, to: $to) { tourId showId name from to }
  }
`);

export const seasonQuery = graphql(`
  query VisitSeason($from: String!, $to: String!, $depot: String, $withIdle: Boolean!, $without: [ID!]!, $check: String) {
    visitSeason(from: $from, to: $to, depot: $depot, withIdle: $withIdle, without: $without, check: $check) { answer without names { id kind model } }
  }
`);

export const countedQuery = graphql(`
  query CountedUse($depot: String) { countedUse(depot: $depot) { itemId kind model depot jurisdiction basis every since count isDue } }
`);

export const addDays = graphql(`mutation AddVisitDays($days: [PossibleDayInput!]!) { addVisitDays(days: $days) }`);

export const agreeVisits = graphql(`
  mutation AgreeVisits($from: String!, $to: String!, $depot: String, $visits: [ID!]!) { agreeVisits(from: $from, to: $to, depot: $depot, visits: $visits) }
`);

export const moveVisit = graphql(`
  mutation MoveVisit($id: ID!, $onDay: String!, $expectedVersion: Int!) { moveVisit(id: $id, onDay: $onDay, expectedVersion: $expectedVersion) }
`);

export const cancelVisit = graphql(
  `mutation CancelVisit($id: ID!, $expectedVersion: Int!) { cancelVisit(id: $id, expectedVersion: $expectedVersion) }`,
);

export const visitListQuery = graphql(`
  query VisitList($id: ID!) {
    visitList(id: $id) {
      visit { id onDay placeName state list entered version }
      items { id kind model place intervals rules }
      lines { itemId examinationId outcome report remark }
    }
  }
`);

export const enterResults = graphql(`
  mutation EnterVisitResults($id: ID!, $examiner: String!, $reportFile: ID, $lines: [VisitResultInput!]!) {
    enterVisitResults(id: $id, examiner: $examiner, reportFile: $reportFile, lines: $lines) { visit { entered } }
  }
`);

export const ownCalendarsQuery = graphql(`query OwnCalendars { ownCalendars { id depot madeAt } }`);
export const renewCalendar = graphql(`mutation RenewCalendar($depot: String) { renewCalendar(depot: $depot) }`);
export const withdrawCalendar = graphql(`mutation WithdrawCalendar($id: ID!) { withdrawCalendar(id: $id) }`);
