import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import { request } from '../../../platform/request.js';
import { Faults } from '../../../ui/faults.js';
import { Loaded } from '../../../ui/page.js';
import type { ReadTour } from './save-over.js';
import { type TourEdit, useTourEdits } from './use-tour-edits.js';

const kitQuery = graphql(`
  query TravellingKit {
    trucks: items(kind: "truck", first: 100) { edges { node { id model } } }
    cases: items(kind: "case", first: 200) { edges { node { id model } } }
  }
`);

const withTruck =
  (id: string, on: boolean): TourEdit =>
  (tour) => ({ ...tour, trucks: on ? [...new Set([...tour.trucks, id])] : tour.trucks.filter((each) => each !== id) });

const withCase =
  (id: string, on: boolean): TourEdit =>
  (tour) => {
    const others = tour.freight.filter((each) => each.case !== id);
    return { ...tour, freight: !on ? others : others.length < tour.freight.length ? tour.freight : [...others, { case: id }] };
  };

const withBridgeFormula =
  (on: boolean): TourEdit =>
  ({ roadRules: _roadRules, ...rest }) =>
    on ? { ...rest, roadRules: ['US bridge formula'] } : rest;

interface Piece {
  readonly id: string;
  readonly model: string;
}

/** Trucks and cases of the tour, ticked as fast as one likes. */
export function TravellingKit({ onFile }: { onFile: ReadTour }) {
  const kit = useQuery({ queryKey: ['travelling-kit'], queryFn: () => request(kitQuery) });
  const { tour, isSaving, error, change } = useTourEdits(onFile);
  const [leaving, setLeaving] = useState<string | null>(null);
  const cases = tour.freight.map((each) => each.case);
  return (
    <Loaded query={kit}>
      {(data) => (
        <>
          <h3>Trucks</h3>
          {data.trucks.edges.length === 0 && (
            <p>
              No truck is on file. <Link to="/register">Put one in the register</Link>.
            </p>
          )}
          <Ticks
            pieces={data.trucks.edges.map((edge) => edge.node)}
            ticked={tour.trucks}
            onTick={(id, on) => (on ? change(withTruck(id, true)) : setLeaving(id))}
          />
          {leaving !== null && (
            <TruckLeaves
              id={leaving}
              shows={tour.shows.length}
              onKeep={() => setLeaving(null)}
              onLeave={() => {
                change(withTruck(leaving, false));
                setLeaving(null);
              }}
            />
          )}
          <label className="row">
            <input
              type="checkbox"
              className="tick"
              checked={tour.roadRules?.includes('US bridge formula') ?? false}
              onChange={(event) => change(withBridgeFormula(event.target.checked))}
            />
            Hold every load against the federal bridge formula of the United States (23 U.S.C. 127)
          </label>
          <details>
            <summary>{cases.length} cases travel</summary>
            <Ticks pieces={data.cases.edges.map((edge) => edge.node)} ticked={cases} onTick={(id, on) => change(withCase(id, on))} />
          </details>
          {isSaving && (
            <p role="status" className="quiet">
              Saving ...
            </p>
          )}
          <Faults of={error} />
        </>
      )}
    </Loaded>
  );
}

function Ticks({
  pieces,
  ticked,
  onTick,
}: {
  pieces: readonly Piece[];
  ticked: readonly string[];
  onTick: (id: string, on: boolean) => void;
}) {
  return (
    <ul className="plain row">
      {pieces.map(({ id, model }) => (
        <li key={id}>
          <label className="row">
            <input type="checkbox" className="tick" checked={ticked.includes(id)} onChange={(event) => onTick(id, event.target.checked)} />
            {id} {model}
          </label>
        </li>
      ))}
    </ul>
  );
}

function TruckLeaves({ id, shows, onKeep, onLeave }: { id: string; shows: number; onKeep: () => void; onLeave: () => void }) {
  return (
    <div role="group" aria-label={`Take ${id} off the tour`}>
      <p>
        {id} carries freight of {shows} {shows === 1 ? 'show' : 'shows'}. Plans that were made with it are stale from then on and put their
        pieces into the trucks that stay. What was kept in place in it is left open. Released revisions keep it until a new one is released.
        Ticking it again brings it back.
      </p>
      <div className="row">
        <button type="button" onClick={onLeave}>
          Take {id} off the tour
        </button>
        <button type="button" className="plain" onClick={onKeep}>
          Keep it
        </button>
      </div>
    </div>
  );
}
