import type { EntityManager } from 'typeorm';
import type { ReasonAgainst } from '#trade';
import { type Words, tell } from '#words';
import type { BarredActRow } from './barred-act.rows.js';

/** Barred acts of a show as they are told. */
export interface BarredActTold {
  readonly id: string;
  readonly tourId: string;
  readonly what: string;
  readonly words: string;
  readonly hang: string | null;
  readonly itemId: string;
  readonly sentence: string;
  /** What the safety officer says of it; null: nobody has looked yet. */
  readonly seen: string | null;
}

/** Steps that stand up there although they were barred: the way down does not wait for them. */
export async function barredStepsOf(manager: EntityManager, planId: string): Promise<ReadonlySet<string>> {
  const rows: { what: string }[] = await manager.query('SELECT DISTINCT what FROM barred_act WHERE plan_id = $1 AND hang IS NOT NULL', [
    planId,
  ]);
  return new Set(rows.map((each) => each.what));
}

const found = `SELECT act.id, act.plan_id AS "planId", act.tour_id AS "tourId", act.show_id AS "showId", act.what, act.words, act.hang, act.items, act.done_at AS "doneAt",
  act.told_at AS "toldAt", account.name AS who,
  answer.because, answer.answered_at AS "answeredAt", officer.name AS "answeredBy", instead.name AS "answeredFor"
  FROM barred_act act LEFT JOIN account ON account.id = act.done_by_id LEFT JOIN barred_act_answer answer ON answer.act_id = act.id
  LEFT JOIN account officer ON officer.id = answer.answered_by_id LEFT JOIN account instead ON instead.id = answer.answered_for_id`;

interface Found extends Pick<BarredActRow, 'id' | 'tourId' | 'showId' | 'what' | 'words' | 'hang' | 'items' | 'doneAt' | 'toldAt'> {
  readonly who: string | null;
  readonly because: string | null;
  readonly answeredAt: Date | null;
  readonly answeredBy: string | null;
  readonly answeredFor: string | null;
}

/** Of the show that a plan is of, whichever of its plans it was: what nobody has looked at first. */
export async function barredActsOfPlan(manager: EntityManager, planId: string, words: Words): Promise<readonly BarredActTold[]> {
  const rows: Found[] = await manager.query(
    `${found} JOIN pack_plan plan ON plan.id = $1 AND act.tour_id = plan.tour_id AND act.show_id = plan.show_id
      ORDER BY answer.act_id IS NOT NULL, act.id LIMIT 200`,
    [planId],
  );
  return rows.map((row) => told(row, words));
}

/** Of shows, whichever of their plans it was, by `tour/show`. */
export async function barredActsOfShows(
  manager: EntityManager,
  shows: readonly { readonly tourId: string; readonly showId: string }[],
  words: Words,
): Promise<ReadonlyMap<string, readonly BarredActTold[]>> {
  const rows: Found[] = await manager.query(
    `${found} JOIN unnest($1::text[], $2::text[]) AS wanted (tour, show) ON act.tour_id = wanted.tour AND act.show_id = wanted.show ORDER BY act.id`,
    [shows.map((each) => each.tourId), shows.map((each) => each.showId)],
  );
  const acts = new Map<string, BarredActTold[]>();
  for (const row of rows) acts.set(`${row.tourId}/${row.showId}`, [...(acts.get(`${row.tourId}/${row.showId}`) ?? []), told(row, words)]);
  return acts;
}

const minute = (at: Date): string => `${at.toISOString().slice(0, 16).replace('T', ' ')} UTC`;

const told = ({ id, tourId, what, words: act, hang, items, who, doneAt, toldAt, ...answer }: Found, words: Words): BarredActTold => ({
  ...{ id, tourId, what, words: act, hang },
  itemId: items[0]?.item ?? '',
  sentence: `Done although barred: ${act}, by ${who ?? 'somebody'} at ${minute(doneAt)} by the clock of the device, told at ${minute(toldAt)}; with ${itemsIn(items, words)}. It counts as no tick and no signature: look at what stands there.`,
  seen: seenIn(answer),
});

function seenIn({ because, answeredAt, answeredBy, answeredFor }: Pick<Found, 'because' | 'answeredAt' | 'answeredBy' | 'answeredFor'>) {
  if (because === null || answeredAt === null) return null;
  const instead = answeredFor === null ? '' : `, deputy of ${answeredFor}`;
  return `Seen by ${answeredBy ?? 'somebody'}${instead} at ${minute(answeredAt)}, because: ${because}.`;
}

/** Items with their reasons; a place that is not judged once for all. */
export const itemsIn = (items: readonly { readonly item: string; readonly why: ReasonAgainst }[], words: Words): string =>
  [
    ...new Set(
      items.map(({ item, why }) => (why.code === 'not-judged' ? tell(words.against, why) : `${item} (${tell(words.against, why)})`)),
    ),
  ].join(', ');
