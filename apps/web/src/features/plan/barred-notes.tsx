import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import type { ReasonAgainst } from '#trade';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Note } from '../../ui/notes.js';

const barredQuery = graphql(
  `query BarredNow($id: ID!) { plan(id: $id) { barred { itemId reason sentence loads hangs } doneAlthoughBarred { what hang sentence } } }`,
);

/** What of a plan must not fly as things stand now. Without a network it is what the house said last. */
export function useBarred(planId: string) {
  const query = useQuery({
    queryKey: ['barred', planId],
    queryFn: async () => (await request(barredQuery, { id: planId })).plan,
  });
  const items = query.data?.barred ?? [];
  return {
    items,
    done: query.data?.doneAlthoughBarred ?? [],
    against: new Map(items.map((each) => [each.itemId, each.reason as ReasonAgainst])),
    saidAt: query.dataUpdatedAt,
    isOld: query.isError || query.fetchStatus === 'paused',
  };
}

/** A stop for each item that must not fly, of the whole plan or of one hang or cart load of it. */
export function BarredNotes({ planId, hang, load }: { planId: string; hang?: string; load?: string }) {
  const { items, done, saidAt, isOld } = useBarred(planId);
  const shown = items.filter(
    (each) => (hang === undefined || each.hangs.includes(hang)) && (load === undefined || each.loads.includes(load)),
  );
  const sentences = [...new Set(shown.map((each) => each.sentence))];
  return (
    <>
      {sentences.map((sentence) => {
        const about = shown.filter((each) => each.sentence === sentence);
        const [only] = about;
        return (
          <Note key={sentence} weight="stop">
            {sentence} Scan, tick and signature refuse it; lowering and going home do not.{' '}
            {only && about.length === 1 && <Link to={`/register/${encodeURIComponent(only.itemId)}`}>{only.itemId}</Link>}
          </Note>
        );
      })}
      {done
        .filter((each) => (hang === undefined || each.hang === hang) && (load === undefined || each.what === load))
        .map((each) => (
          <Note key={each.sentence} weight="stop">
            {each.sentence}
          </Note>
        ))}
      {isOld && saidAt > 0 && <p className="quiet">What may fly was last asked at {momentOf(saidAt)}.</p>}
    </>
  );
}
