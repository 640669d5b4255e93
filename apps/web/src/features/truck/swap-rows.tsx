import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { formatMass, sideWords } from '#drawings';
import type { TruckResultOne } from '#pack-plan';
import { request } from '../../platform/request.js';
import { useSettings } from '../../platform/settings.js';
import { Note } from '../../ui/notes.js';
import { Loaded } from '../../ui/page.js';
import { rowSwapQuery, swapRowsMutation } from './operations.js';
import type { LoadingActs } from './use-loading-act.js';
import { scrolls } from '../../ui/scrolls.js';

/** Breaches told one by one; what cannot be waived comes first. */
const mostShown = 6;

/** Two rows change places: first what that does, then whether it is wanted. */
export function SwapRows({ truck, planId, acts }: { truck: TruckResultOne; planId: string; acts: LoadingActs }) {
  const [first, setFirst] = useState('');
  const [second, setSecond] = useState('');
  const chosen = first !== '' && second !== '' && first !== second;
  const pick = (label: string, value: string, set: (row: string) => void) => (
    <label>
      {label}
      <select value={value} onChange={(event) => set(event.target.value)}>
        <option value="">choose</option>
        {truck.rows.map((row) => (
          <option key={row.number} value={row.number}>
            {row.number}: {row.label}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <details>
      <summary>Two rows change places</summary>
      <div className="fields">
        {pick('One row', first, setFirst)}
        {pick('the other row', second, setSecond)}
      </div>
      {chosen && <Effect truck={truck} planId={planId} first={Number(first)} second={Number(second)} acts={acts} />}
    </details>
  );
}

interface EffectProps {
  readonly truck: TruckResultOne;
  readonly planId: string;
  readonly first: number;
  readonly second: number;
  readonly acts: LoadingActs;
}

function Effect({ truck, planId, first, second, acts }: EffectProps) {
  const [reason, setReason] = useState('');
  const query = useQuery({
    queryKey: ['row swap', planId, truck.id, first, second],
    queryFn: () => readSwap(planId, truck.id, first, second),
  });
  return (
    <Loaded query={query}>
      {({ rowSwap: swap }) => {
        const hard = swap.breaches.some((each) => !each.mayBeWaived);
        return (
          <>
            <BeforeAndAfter swap={swap} />
            {swap.breaches.length === 0 && <Note weight="agrees">No rule is broken.</Note>}
            <Breaches of={swap.breaches} />
            {hard ? (
              <p>These rows cannot change places.</p>
            ) : (
              <>
                {swap.breaches.length > 0 && (
                  <label>
                    Why they need not come off in their turn
                    <input value={reason} onChange={(event) => setReason(event.target.value)} />
                  </label>
                )}
                <button
                  type="button"
                  disabled={acts.isPending || (swap.breaches.length > 0 && reason.trim() === '')}
                  onClick={() =>
                    acts.mutate(
                      async (requestId) =>
                        (
                          await request(
                            swapRowsMutation,
                            { planId, truck: truck.id, first, second, reason: reason.trim() || null },
                            { requestId },
                          )
                        ).swapRows,
                    )
                  }
                >
                  Exchange rows {first} and {second}
                </button>
              </>
            )}
          </>
        );
      }}
    </Loaded>
  );
}

type Swap = Awaited<ReturnType<typeof readSwap>>['rowSwap'];

const readSwap = (planId: string, truck: string, first: number, second: number) => request(rowSwapQuery, { planId, truck, first, second });

/** Every axle and the balance, now and exchanged. */
function BeforeAndAfter({ swap }: { swap: Swap }) {
  const { units } = useSettings();
  return (
    <div {...scrolls}>
      <table className="tight">
        <thead>
          <tr>
            <th />
            <th className="num">Now</th>
            <th className="num">Exchanged</th>
            <th className="num">Limit</th>
          </tr>
        </thead>
        <tbody>
          {swap.axles.map((each) => (
            <tr key={each.axle}>
              <th scope="row">{each.axle}</th>
              <td className="num">{formatMass(each.beforeKg, units)}</td>
              <td className="num">
                {formatMass(each.afterKg, units)} {typeof each.limitKg === 'number' && each.afterKg > each.limitKg && <b>■ over</b>}
              </td>
              <td className="num">{typeof each.limitKg === 'number' ? formatMass(each.limitKg, units) : 'none on file'}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">off the middle</th>
            <td className="num">{sideWords(swap.sideBeforeMm, units)}</td>
            <td className="num">{sideWords(swap.sideAfterMm, units)}</td>
            <td />
          </tr>
        </tbody>
      </table>
    </div>
  );
}

function Breaches({ of }: { of: Swap['breaches'] }) {
  return (
    <>
      {[...of]
        .sort((a, b) => Number(a.mayBeWaived) - Number(b.mayBeWaived))
        .slice(0, mostShown)
        .map((each, index) => (
          <Note key={index} weight={each.mayBeWaived ? 'look' : 'stop'}>
            {each.sentence}
          </Note>
        ))}
      {of.length > mostShown && <p>and {of.length - mostShown} more of the same kind</p>}
    </>
  );
}
