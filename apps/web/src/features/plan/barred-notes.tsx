import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { graphql } from '#contracts';
import type { ReasonAgainst } from '#trade';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Note } from '../../ui/notes.js';
import { SeenForm } from './seen-form.js';

const barredQuery = graphql(
  `query BarredNow($id: ID!) { plan(id: $id) { flying { hang name inCharge } barred { itemId reason sentence loads hangs } doneAlthoughBarred { id tourId what hang sentence seen } } }`,
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
    flying: query.data?.flying ?? [],
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
  const { items, flying, saidAt, isOld } = useBarred(planId);
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
            <InTheAir flying={flying.filter((one) => about.some((each) => each.hangs.includes(one.hang)))} />
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

/** What hangs in the air with something that must not fly: first of all, with its sheet. */
function InTheAir({ flying }: { flying: ReturnType<typeof useBarred>['flying'] }) {
  const { tourId = '', showId = '' } = useParams();
  if (flying.length === 0) return null;
  return (
    <>
      {flying.map(({ hang, name, inCharge }) => (
        <span key={hang}>
          <b>
            {name} is in the air{inCharge && `, in charge: ${inCharge}`}.
          </b>{' '}
          <Link to={`/print/${tourId}/${showId}/hangs-with?hang=${encodeURIComponent(hang)}`} target="_blank">
            What hangs with it
          </Link>
          .{' '}
        </span>
      ))}
    </>
  );
}

/** On the floor: what is in the air and must not fly, and nothing else. */
export function InTheAirNotes({ planId }: { planId: string }) {
  const { items, flying } = useBarred(planId);
  return flying.flatMap((hang) => {
    const about = items.filter((each) => each.hangs.includes(hang.hang));
    if (about.length === 0) return [];
    return [
      <Note key={hang.hang} weight="stop">
        <InTheAir flying={[hang]} />
        {[...new Set(about.map((each) => each.sentence))].join(' ')} Lower it by its lift sequence: the way down stays open.
      </Note>,
    ];
  });
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
