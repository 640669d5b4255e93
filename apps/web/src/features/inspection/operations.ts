import { graphql } from '#contracts';
import type { InspectedItem } from '#records';
import { request } from '../../platform/request.js';

const inspectedQuery = graphql(`
  query InspectedItems($ids: [ID!], $kinds: [String!], $depots: [String!], $after: String) {
    inspectedItems(ids: $ids, kinds: $kinds, depots: $depots, after: $after) { items hasMore }
  }
`);

export interface InspectedWanted {
  readonly ids?: readonly string[];
  readonly kinds?: readonly string[];
  readonly depots?: readonly string[];
}

/** Every item that is wanted, page after page. */
export async function inspectedItems({ ids, kinds, depots }: InspectedWanted): Promise<readonly InspectedItem[]> {
  const found: InspectedItem[] = [];
  for (let after: string | null = null, more = true; more; ) {
    const page = (
      await request(inspectedQuery, {
        ids: ids ? [...ids] : null,
        kinds: kinds ? [...kinds] : null,
        depots: depots ? [...depots] : null,
        after,
      })
    ).inspectedItems;
    const items = page.items as readonly InspectedItem[];
    found.push(...items);
    after = items.at(-1)?.id ?? null;
    more = page.hasMore;
  }
  return found;
}

export const rulesAndSealQuery = graphql(`query RulesAndSeal { rules logSeal { head lines sealedAt } }`);

export const signOffsQuery = graphql(`
  query SignOffs($planId: ID!) { riggingRecord(planId: $planId) { signOffs { hang kind name remark company role place signedAt signedBy } } }
`);
