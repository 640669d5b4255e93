import type { TourLoad, WholeTour } from '#pack-plan';
import { cartsOverTime, inShort, isLeftAlone, whyRebuilt } from './how-it-stands.js';

const namesIn = ({ stops }: WholeTour) => {
  const names = new Map(stops.map((stop) => [stop.show, stop.name]));
  return (show: string) => names.get(show) ?? show;
};

export function ShowSums({ plan }: { plan: WholeTour }) {
  return (
    <div className="scroll">
      <p className="quiet">
        Carts that stand as they are, are rebuilt, or stand ready for a later show; box moves, and those were each show planned alone.
      </p>
      <table className="tight">
        <thead>
          <tr>
            <th>Show</th>
            <th className="num">Stand</th>
            <th className="num">Rebuilt</th>
            <th className="num">Ready</th>
            <th className="num">Moves</th>
            <th className="num">Alone</th>
          </tr>
        </thead>
        <tbody>
          {plan.stops.map(({ show, name, loads, ahead, moves, movesApart }, index) => (
            <tr key={show}>
              <td>
                {name}
                <small className="quiet"> {index === 0 ? 'prep' : ''}</small>
              </td>
              <td className="num">{loads.filter(isLeftAlone).length}</td>
              <td className="num">{loads.filter((each) => !isLeftAlone(each)).length}</td>
              <td className="num">{ahead.length}</td>
              <td className="num">{moves.length}</td>
              <td className="num">{movesApart}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** One line a cart, one column a show. */
export function CartsOverTime({ plan }: { plan: WholeTour }) {
  return (
    <details>
      <summary>Its carts over time</summary>
      <div className="scroll" role="region" aria-label="Carts over time">
        <table className="carts-over-time">
          <thead>
            <tr>
              <th>Cart</th>
              {plan.stops.map(({ show, name }) => (
                <th key={show}>{name}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {cartsOverTime(plan).map(({ cart, at }) => (
              <tr key={cart}>
                <th scope="row" className="mono">
                  {cart}
                </th>
                {at.map(({ show, load }) => (
                  <td key={show}>{load ? <Cell load={load} plan={plan} at={show} /> : ''}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function Cell({ load, plan, at }: { load: TourLoad; plan: WholeTour; at: string }) {
  const what = inShort(load);
  return (
    <>
      {load.name}
      {load.show !== at && ` for ${namesIn(plan)(load.show)}`}
      <br />
      <small>{isLeftAlone(load) ? <span className="quiet">{what}</span> : <b>{what}</b>}</small>
    </>
  );
}

/** Show by show what is not left alone, and why; and which places stay empty. */
export function WhatIsRebuilt({ plan }: { plan: WholeTour }) {
  const nameOf = namesIn(plan);
  return (
    <details>
      <summary>What is rebuilt, where and why</summary>
      {plan.stops.map(({ show, name, loads, ahead, empty }) => {
        const rebuilt = [...loads, ...ahead].filter((each) => !isLeftAlone(each));
        const ready = loads.filter((each) => each.how.code === 'was-made-ready');
        return (
          <div key={show}>
            <h3>{name}</h3>
            {rebuilt.length === 0 && <p>Nothing is rebuilt.</p>}
            <ul>
              {rebuilt.map((each) => (
                <li key={each.cart}>
                  {each.name}
                  {each.show !== show && `, made ready for ${nameOf(each.show)}`} on <span className="mono">{each.cart}</span> (
                  {inShort(each)}): {whyRebuilt(each, nameOf)}.
                </li>
              ))}
              {ready.map((each) => (
                <li key={each.cart}>
                  {each.name} on <span className="mono">{each.cart}</span>: {whyRebuilt(each, nameOf)}.
                </li>
              ))}
              {empty.map((each) => (
                <li key={each.load}>
                  {each.name}: no box for {each.positions.length === 1 ? 'place' : 'places'} {each.positions.join(', ')}.
                </li>
              ))}
            </ul>
          </div>
        );
      })}
    </details>
  );
}
