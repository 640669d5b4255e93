import { useInfiniteQuery, useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { dayOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { More } from '../../ui/more.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { Answering } from './answering.js';
import { answerAllMutation, answerMutation, proposalsQuery } from './operations.js';

interface Proposal {
  readonly id: string;
  readonly kind: string;
  readonly subject: string;
  readonly itemId?: string | null;
  readonly sentence: string;
  readonly proposedBy: string;
  readonly proposedAt: string;
  readonly reason?: string | null;
  readonly isOwn: boolean;
  readonly figures: readonly { readonly name: string; readonly was?: string | null; readonly wanted?: string | null }[];
}

const titles: Readonly<Record<string, string>> = {
  model: 'Models',
  'load rule': 'Load regimes',
  'examination rule': 'Examination rules',
  system: 'Rigging systems',
  item: 'Items',
  record: 'Examinations',
};

/** What waits for the safety officer, kind by kind: old and new, who and when. One or all are accepted or declined in one act. */
export function WaitingScreen({ me }: { me: Person }) {
  const query = useInfiniteQuery({
    queryKey: ['proposals'],
    queryFn: async ({ pageParam }) => (await request(proposalsQuery, { after: pageParam })).proposals,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
  });
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const proposals = query.data?.pages.flatMap((page) => page.edges.map((edge) => edge.node)) ?? [];
  const chosen = proposals.filter(({ id }) => ticked.has(id)).map(({ id }) => id);
  const mayAnswer = actsAsOfficer(me);
  const tick = (ids: readonly string[], isOn: boolean) => {
    const next = new Set(ticked);
    for (const id of ids)
      if (isOn) next.add(id);
      else next.delete(id);
    setTicked(next);
  };
  const kinds = Object.keys(titles).filter((kind) => proposals.some((each) => each.kind === kind));
  return (
    <Page
      title={mayAnswer ? 'Waiting for you' : 'Waiting for the safety officer'}
      lede="What others propose holds once the safety officer accepts it. Until then plans are made with what was on file before, or without it."
    >
      <Answering />
      <Loaded query={query}>
        {({ pages }) => {
          const last = pages.at(-1);
          if (!last || last.totalCount === 0) return <p className="quiet">Nothing waits.</p>;
          return (
            <>
              {kinds.map((kind, index) => (
                <KindPart
                  key={kind}
                  number={index + 1}
                  kind={kind}
                  proposals={proposals.filter((each) => each.kind === kind)}
                  ticked={mayAnswer ? ticked : null}
                  onTick={tick}
                />
              ))}
              <More of={query} />
              {mayAnswer && (
                <Part number={kinds.length + 1} title="Your answer">
                  <Answer
                    chosen={chosen}
                    count={last.totalCount}
                    newest={pages[0]?.newest ?? null}
                    holdsOwn={chosen.length > 0 ? proposals.some((each) => each.isOwn && ticked.has(each.id)) : last.holdsOwn}
                    onDone={() => setTicked(new Set())}
                  />
                </Part>
              )}
            </>
          );
        }}
      </Loaded>
    </Page>
  );
}

function KindPart({
  number,
  kind,
  proposals,
  ticked,
  onTick,
}: {
  number: number;
  kind: string;
  proposals: readonly Proposal[];
  /** null: this person only looks. */
  ticked: ReadonlySet<string> | null;
  onTick: (ids: readonly string[], isOn: boolean) => void;
}) {
  const ids = proposals.map((each) => each.id);
  const areAll = ticked !== null && ids.every((id) => ticked.has(id));
  return (
    <Part number={number} title={titles[kind] ?? kind}>
      {ticked !== null && proposals.length > 1 && (
        <label className="row">
          <input type="checkbox" className="tick" checked={areAll} onChange={() => onTick(ids, !areAll)} /> All {proposals.length} of these
        </label>
      )}
      <ul className="plain">
        {proposals.map((each) => (
          <li key={each.id} className="record">
            <One proposal={each} isTicked={ticked?.has(each.id) ?? null} onTick={(isOn) => onTick([each.id], isOn)} />
          </li>
        ))}
      </ul>
    </Part>
  );
}

function One({ proposal, isTicked, onTick }: { proposal: Proposal; isTicked: boolean | null; onTick: (isOn: boolean) => void }) {
  const { subject, itemId, sentence, figures, proposedBy, proposedAt, reason, isOwn } = proposal;
  return (
    <>
      {isTicked === null ? (
        <p>
          <b>{subject}</b>
        </p>
      ) : (
        <label className="row">
          <input type="checkbox" className="tick" checked={isTicked} onChange={(event) => onTick(event.target.checked)} /> <b>{subject}</b>
          {isOwn && <span className="quiet"> (your own)</span>}
        </label>
      )}
      <p>{sentence}</p>
      <ul className="plain">
        {figures.map(({ name, was, wanted }) => (
          <li key={name}>
            {name}: <span className="mono">{was ?? 'nothing'}</span> → <span className="mono">{wanted ?? 'nothing'}</span>
          </li>
        ))}
      </ul>
      <p className="quiet">
        Proposed by {proposedBy}, {dayOf(proposedAt)}
        {reason ? `: ${reason}` : ''}. {itemId && <Link to={`/register/${encodeURIComponent(itemId)}`}>Look at {itemId}</Link>}
      </p>
    </>
  );
}

function Own({ isAll }: { isAll: boolean }) {
  return (
    <p>
      What you proposed yourself another safety officer accepts: two pairs of eyes.
      {isAll && ' Tick what others proposed to accept that.'}
    </p>
  );
}

/** More than this is answered in portions. */
const mostAtOnce = 1_000;

interface Answered {
  readonly chosen: readonly string[];
  readonly count: number;
  readonly newest: string | null;
  readonly reason: string;
}

function useAnswer({ chosen, count, newest, reason }: Answered, onDone: () => void) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: async ({ isAll, accept }: { isAll: boolean; accept: boolean }) => {
      if (isAll && newest !== null && count > mostAtOnce) {
        await request(answerAllMutation, { through: newest, accept, reason });
        return null;
      }
      return (await request(answerMutation, { ...(isAll ? { through: newest } : { ids: [...chosen] }), accept, reason })).answerProposals;
    },
    onSuccess: async () => {
      onDone();
      await client.invalidateQueries();
    },
  });
}

/** One act over what is ticked, or over everything up to the newest that was seen. */
function Answer({
  chosen,
  count,
  newest,
  holdsOwn,
  onDone,
}: {
  chosen: readonly string[];
  count: number;
  newest: string | null;
  /** Something of it this person proposed, who declines it but does not accept it. */
  holdsOwn: boolean;
  onDone: () => void;
}) {
  const [reason, setReason] = useState('');
  const answer = useAnswer({ chosen, count, newest, reason }, () => {
    setReason('');
    onDone();
  });
  const isWithout = answer.isPending || reason.trim() === '';
  const button = (isAll: boolean, accept: boolean, words: string) => (
    <button type="button" className={accept ? undefined : 'plain'} disabled={isWithout} onClick={() => answer.mutate({ isAll, accept })}>
      {words}
    </button>
  );
  return (
    <>
      <div className="fields">
        <label>
          Why: kept with what it decides, under your name
          <input value={reason} maxLength={300} onChange={(event) => setReason(event.target.value)} />
        </label>
      </div>
      {chosen.length > 0 ? (
        <div className="row">
          {!holdsOwn && button(false, true, `Accept the ${chosen.length} ticked`)}
          {button(false, false, `Decline the ${chosen.length} ticked`)}
        </div>
      ) : (
        <div className="row">
          {!holdsOwn && button(true, true, count === 1 ? 'Accept it' : `Accept all ${count} that wait`)}
          {button(true, false, count === 1 ? 'Decline it' : `Decline all ${count} that wait`)}
        </div>
      )}
      {holdsOwn && <Own isAll={chosen.length === 0} />}
      <p className="quiet">Tick some to answer those alone. Declined, the value on file before stays; what was new stays barred.</p>
      <Faults of={answer.error} />
      {typeof answer.data === 'number' && <p role="status">{answer.data} answered.</p>}
    </>
  );
}
