import {
  BarredNowDocument,
  LatestSearchDocument,
  PlanCartsDocument,
  PlanDueDocument,
  PlanFindingsDocument,
  PlanHangDocument,
  PlanHardwareDocument,
  PlanPicksDocument,
  PlanProgressDocument,
  PlanTruckDocument,
  PlanTruckHeadDocument,
  type ShowPageQuery,
  ShowPageDocument,
} from '../../../../libs/contracts/graphql.js';

export type Ask = (query: string, variables?: object) => Promise<unknown>;

type Part = [query: { toString(): string }, variables: object];

/** Opens the show page as the screen does that has nothing of it yet: its head, then all parts of the plan in force, at most six requests at once. */
export async function openShowPage(ask: Ask, tourId: string, showId: string): Promise<void> {
  const { showPage } = (await ask(ShowPageDocument.toString(), { tourId, showId })) as ShowPageQuery;
  const plan = showPage.released ?? showPage.draft;
  if (!plan) return;
  const { id } = plan;
  const parts: Part[] = [
    [BarredNowDocument, { id }],
    [PlanPicksDocument, { id }],
    ...plan.hangs.map((hang): Part => [PlanHangDocument, { id, hang }]),
    [PlanFindingsDocument, { id }],
    [PlanCartsDocument, { id }],
    [PlanProgressDocument, { id }],
    [PlanHardwareDocument, { id }],
    [PlanTruckHeadDocument, { id }],
    ...plan.trucks.map((truck): Part => [PlanTruckDocument, { id, truck }]),
    [LatestSearchDocument, { tourId, showId }],
    [PlanDueDocument, { id }],
  ];
  const next = async (): Promise<void> => {
    for (let part = parts.shift(); part; part = parts.shift()) await ask(part[0].toString(), part[1]);
  };
  await Promise.all(Array.from({ length: 6 }, next));
}
