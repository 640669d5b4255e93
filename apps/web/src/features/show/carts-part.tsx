import { useState } from 'react';
import { Link } from 'react-router';
import type { CartsResult } from '#pack-plan';
import { Findings } from '../../ui/findings.js';
import { Loaded, Part } from '../../ui/page.js';
import { useCarts, useFindings, useProgress } from '../plan/use-plan-parts.js';
import { AskableCart, type ChosenPlace, WhyPlace } from './why-place.js';

export function CartsPart({ planId, base }: { planId: string; base: string }) {
  const query = useCarts(planId);
  return <Loaded query={query}>{(carts) => <Carts planId={planId} carts={carts} base={base} />}</Loaded>;
}

function Carts({ planId, carts, base }: { planId: string; carts: CartsResult; base: string }) {
  const checks = useProgress(planId).data?.cartChecks ?? [];
  const findings = useFindings(planId).data ?? [];
  const confirmed = new Map(checks.map((each) => [each.load, each.checkedBy]));
  const [asked, setAsked] = useState<ChosenPlace | null>(null);
  const moved = new Set(carts.moves.map((each) => each.to));
  return (
    <Part
      number={2}
      title="Carts, top box first"
      id="carts"
      margin={
        <>
          <Findings findings={findings} section="carts" />
          <details>
            <summary>After the number of moves</summary>
            <ul>
              {(carts.wishes ?? []).map((wish) => (
                <li key={wish.name}>
                  {wish.name}: {wish.value} {wish.unit}
                </li>
              ))}
            </ul>
          </details>
          <div className="row">
            <Link className="btn plain" to={`${base}/moves?plan=${planId}`}>
              Show the moves
            </Link>
            <Link className="btn plain" to={`${base}/carts`}>
              Confirm carts
            </Link>
          </div>
        </>
      }
    >
      {asked && <WhyPlace key={`${asked.load.id} ${asked.slot}`} planId={planId} place={asked} onClose={() => setAsked(null)} />}
      <p className="quiet">Press a box, or the name of a cart, to be told why it, and not another, is there.</p>
      <div className="carts">
        {carts.loads.map((load) => (
          <figure key={load.id}>
            <AskableCart load={load} onAsk={setAsked} />
            <figcaption>
              <b>
                {load.hangName}, cart {load.number}
              </b>{' '}
              {load.cart === null ? (
                'no cart'
              ) : (
                <button
                  type="button"
                  className="word mono"
                  aria-label={`Why ${load.cart} carries it`}
                  onClick={() => setAsked({ load, slot: null })}
                >
                  {load.cart}
                </button>
              )}
              {confirmed.has(load.id) ? (
                <span className="st">○ confirmed by {confirmed.get(load.id)}</span>
              ) : load.boxes.some((box) => box.serial === null) ? (
                <span className="st">■ stop: box missing</span>
              ) : moved.has(load.cart ?? '') ? (
                <span className="st look">◐ boxes to move</span>
              ) : (
                <span className="st">○ stands right</span>
              )}
            </figcaption>
          </figure>
        ))}
      </div>
      {carts.leftOut.length > 0 && (
        <details>
          <summary>
            {carts.leftOut.length} {carts.leftOut.length === 1 ? 'box is' : 'boxes are'} kept out of the plan
          </summary>
          <ul>
            {carts.leftOut.map((each) => (
              <li key={each.serial}>
                <span className="mono">{each.serial}</span> ({each.model}): {each.reason}
              </li>
            ))}
          </ul>
        </details>
      )}
    </Part>
  );
}
