import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import type { ReasonAgainst } from '#trade';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Note } from '../../ui/notes.js';
import { SeenForm } from './seen-form.js';

const barredQuery = graphql(
  `query BarredNow($id: ID!) { plan(id: $id) { barred { itemId reason sentence loads hangs } doneAlthoughBarred { id tourId what hang sentence seen } } }`,
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

interface Props {
  readonly planId: string;
  readonly hang?: string;
  readonly load?: string;
  /** Left out where nobody answers: on the floor. */
  readonly me?: Person;
}

/** A stop for each item that must not fly, of the whole plan or of one hang or cart load of it. */
export function BarredNotes({ planId, hang, load, me }: Props) {
  const { items, saidAt, isOld } = useBarred(planId);
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
      <DoneNotes planId={planId} {...{ hang, load, me }} />
      {isOld && saidAt > 0 && <p className="quiet">What may fly was last asked at {momentOf(saidAt)}.</p>}
    </>
  );
}

/** What was done although it was barred: a stop until the safety officer, or a deputy, has looked and said why; a note from then on. */
export function DoneNotes({ planId, hang, load, me }: Props) {
  const { done } = useBarred(planId);
  return done
    .filter((each) => (hang === undefined || each.hang === hang) && (load === undefined || each.what === load))
    .map((each) => (
      <Note key={each.id} weight={each.seen ? 'look' : 'stop'}>
        {each.sentence} {each.seen}
        {!each.seen && me && actsAsOfficer(me) && <SeenForm tourId={each.tourId} id={each.id} />}
      </Note>
    ));
}
