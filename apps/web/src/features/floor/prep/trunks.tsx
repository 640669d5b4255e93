import { useState } from 'react';
import { Link, useParams } from 'react-router';
import { type TrunkLine, tapGate, trunkLines, wrongCounts } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { Faults } from '../../../ui/faults.js';
import { useHardware } from '../../plan/use-plan-parts.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { signal } from '../page/signal.js';
import { foundWords, usePrep } from './use-prep.js';

/** Trunks to count, or one of them, batch by batch. */
export function Trunks(given: OnFloor) {
  const { trunkId } = useParams();
  const { home, plan } = given;
  const query = useHardware(plan.id);
  const prep = usePrep(given);
  const trunks = trunkLines(query.data?.lines ?? []);
  const lines = trunks.get(trunkId ?? '');
  if (trunkId !== undefined && lines) return <Count key={trunkId} given={given} trunk={trunkId} lines={lines} />;
  return (
    <FloorPage name="Trunks" title="Hardware trunks" back={`${home}/prep`}>
      {query.isError && <Faults of={query.error} />}
      {!query.data && !query.isError && <p className="quiet">Reading ...</p>}
      {[...trunks].map(([trunk, held]) => {
        const found = prep.foundOf('trunk', trunk);
        return (
          <Link key={trunk} className="job" to={`${home}/prep/trunks/${encodeURIComponent(trunk)}`}>
            <b className="mono">{trunk}</b>
            <span>{held.length === 1 ? '1 batch' : `${held.length} batches`}</span>
            <div className="n">
              <small>{found ? foundWords[found] : 'open'}</small>
            </div>
          </Link>
        );
      })}
    </FloorPage>
  );
}

/** What was typed as a number of pieces; undefined where it is none. */
function piecesOf(text: string | undefined): number | undefined {
  const typed = (text ?? '').trim();
  return /^\d{1,7}$/.test(typed) ? Number(typed) : undefined;
}

interface CountProps {
  readonly given: OnFloor;
  readonly trunk: string;
  readonly lines: readonly TrunkLine[];
}

/** What was counted, and its way to the house. */
function useCount({ given: { plan, show }, trunk, lines }: CountProps) {
  const outbox = useOutbox();
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [isNoted, setIsNoted] = useState(false);
  const [unkept, setUnkept] = useState<unknown>(null);
  const [gate] = useState(() => tapGate());
  const counted = new Map(
    lines.flatMap(({ lot }) => {
      const pieces = piecesOf(typed[lot]);
      return pieces === undefined ? [] : [[lot, pieces] as const];
    }),
  );
  const off = wrongCounts(lines, counted);
  const note = (at: number) => {
    if (!gate(at)) return;
    const counts = [...counted].map(([lot, count]) => ({ lot, count }));
    const words = `${show.name}: ${trunk} counted, ${off.length === 0 ? 'complete' : `${off.length} lines not right`}`;
    signal(off.length === 0);
    outbox
      .put({ kind: 'trunk', values: { planId: plan.id, item: trunk, trunk, counts }, words, tourId: show.tourId, showId: show.showId })
      .then(() => setIsNoted(true), setUnkept);
  };
  const type = (lot: string, text: string) => {
    setTyped({ ...typed, [lot]: text });
    setIsNoted(false);
  };
  return { typed, counted, off, isNoted, unkept, note, type };
}

/** Each batch is counted blind: what it should be is said once something was typed. */
function Count(props: CountProps) {
  const { given, trunk, lines } = props;
  const count = useCount(props);
  const { off, isNoted } = count;
  const left = lines.length - count.counted.size;
  return (
    <FloorPage
      name={`${trunk}, counted`}
      title={`Trunk ${trunk}`}
      back={`${given.home}/prep/trunks`}
      foot={
        <button
          type="button"
          className={left === 0 && off.length > 0 ? 'warn big' : 'big'}
          disabled={given.me.role === 'safety' || left > 0 || isNoted}
          onClick={(event) => count.note(event.timeStamp)}
        >
          {isNoted ? 'Noted' : left > 0 ? `${left} to count` : off.length > 0 ? `Note it: ${off.length} not right` : 'Complete'}
        </button>
      }
    >
      <Faults of={count.unkept} />
      {isNoted && (
        <div className={off.length === 0 ? 'answer' : 'answer stop'} role="status">
          {off.length === 0 ? `○ ${trunk} is complete.` : `■ ${trunk} is not right: fill it, then count it again.`}
        </div>
      )}
      <ul className="slots" aria-label="Batches of this trunk">
        {lines.map((line) => (
          <OneBatch
            key={line.lot}
            line={line}
            found={count.counted.get(line.lot)}
            typed={count.typed[line.lot] ?? ''}
            onType={count.type}
          />
        ))}
      </ul>
    </FloorPage>
  );
}

interface BatchProps {
  readonly line: TrunkLine;
  readonly found: number | undefined;
  readonly typed: string;
  readonly onType: (lot: string, text: string) => void;
}

function OneBatch({ line, found, typed, onType }: BatchProps) {
  const isWrong = found !== undefined && found !== line.count;
  const by = Math.abs((found ?? 0) - line.count);
  return (
    <li className={isWrong ? 'wrong' : undefined}>
      <b>{found === undefined ? '' : isWrong ? '■' : '○'}</b>
      <span>
        {line.item}, {line.key} <span className="mono">{line.lot}</span>{' '}
        {found !== undefined && (
          <span className="quiet">
            {isWrong ? `${by} ${found < line.count ? 'short' : 'too many'} of ${line.count}` : `all ${line.count}`}
          </span>
        )}
      </span>
      <input
        className="figure"
        inputMode="numeric"
        aria-label={`${line.item}, ${line.lot}: pieces`}
        value={typed}
        onChange={(event) => onType(line.lot, event.target.value)}
      />
    </li>
  );
}
