import { graphql } from '#contracts';
import type { Lent } from '#tour-file';
import { type AnswerOf, request } from '../../platform/request.js';

const lentKitQuery = graphql(`query LentKit { lentKit { itemId kind model count depot owner lent barredBy } }`);
export const takeInMutation = graphql(`mutation TakeInLentKit($kit: LentKitInput!) { takeInLentKit(kit: $kit) { itemId waits } }`);
export const clearPaperMutation = graphql(
  `mutation ClearLentPaper($itemId: ID!, $reason: String!) { clearLentPaper(itemId: $itemId, reason: $reason) }`,
);
export const giveBackMutation = graphql(
  `mutation GiveBackLentKit($itemId: ID!, $on: String!, $condition: String!) { giveBackLentKit(itemId: $itemId, on: $on, condition: $condition) }`,
);
export const depotsAndModelsQuery = graphql(`query ModelsToTakeIn { catalogueModels { kind model } }`);

export type LentKitView = Omit<AnswerOf<typeof lentKitQuery>['lentKit'][number], 'lent' | 'count'> & {
  readonly lent: Lent;
  readonly count: number | null;
};

export const readLentKit = async (): Promise<readonly LentKitView[]> =>
  (await request(lentKitQuery)).lentKit.map((each) => ({ ...each, lent: each.lent as Lent, count: each.count ?? null }));
