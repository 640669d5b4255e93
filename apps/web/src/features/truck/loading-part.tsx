import { useState } from 'react';
import { type TruckResultOne, type TrucksHead, groupOf } from '#pack-plan';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Part } from '../../ui/page.js';
import { UnderWay } from '../../ui/under-way.js';
import {
  endWaiverMutation,
  groupEndMutation,
  keepLoadedMutation,
  keepPiecesMutation,
  leaveCaseMutation,
  letGoMutation,
  takeCaseMutation,
  takePieceAlongMutation,
  waiveMutation,
} from './operations.js';
import { useTrucks } from '../plan/use-plan-parts.js';
import { SwapRows } from './swap-rows.js';
import { Answer } from './loading-answer.js';
import type { LoadingActs } from './use-loading-act.js';

interface LoadingProps {
  readonly head: TrucksHead;
  /** All trucks of the plan. */
  readonly trucks: readonly string[];
  readonly planId: string;
  readonly truck: TruckResultOne;
  readonly loadedRows: number;
  readonly acts: LoadingActs;
}

/** What may be changed at the dock; the rest is planned around it, as a draft. */
export function LoadingPart({ head, trucks, planId, truck, loadedRows, acts }: LoadingProps) {
  const notes = head.notes ?? [];
  const kept = (truck.kept ?? []).map((each) => each.piece);
  return (
    <Part
      number={2}
      title="Change the load"
      margin={<p className="caution">{'A revision never changes: each wish makes a draft around it.'}</p>}
    >
      <div className="floor">
        <div className="row">
          <button
            type="button"
            disabled={acts.isPending || loadedRows === 0}
            onClick={() => acts.mutate(async (requestId) => (await request(keepLoadedMutation, { planId }, { requestId })).keepLoaded)}
          >
            Lock what is ticked as loaded
          </button>
          {kept.length > 0 && (
            <button
              type="button"
              className="plain"
              disabled={acts.isPending}
              onClick={() =>
                acts.mutate(async (requestId) => (await request(letGoMutation, { planId, pieces: kept }, { requestId })).letPiecesGo)
              }
            >
              Let all of {truck.id} go
            </button>
          )}
        </div>
        {acts.isPending && <UnderWay job={acts.job} onCancel={acts.cancel} of="Planning around it" />}
        <Faults of={acts.error} />
        {acts.data && <Answer of={acts.data} />}
        {notes.length > 0 && (
          <ul>
            {notes.map((each, index) => (
              <li key={index}>
                {each.sentence}{' '}
                {each.kind === 'waived' && (
                  <button
                    type="button"
                    className="plain"
                    onClick={() =>
                      acts.mutate(
                        async (requestId) => (await request(endWaiverMutation, { planId, piece: each.subject }, { requestId })).endWaiver,
                      )
                    }
                  >
                    In its turn again
                  </button>
                )}
                {each.kind === 'taken' && (
                  <button
                    type="button"
                    className="plain"
                    onClick={() =>
                      acts.mutate(
                        async (requestId) => (await request(leaveCaseMutation, { planId, case: each.subject }, { requestId })).leaveCase,
                      )
                    }
                  >
                    Leave it behind
                  </button>
                )}
                {each.kind === 'end' && (
                  <button
                    type="button"
                    className="plain"
                    onClick={() =>
                      acts.mutate(
                        async (requestId) =>
                          (await request(groupEndMutation, { planId, group: each.subject, end: null }, { requestId })).setGroupEnd,
                      )
                    }
                  >
                    In its usual place
                  </button>
                )}
              </li>
            ))}
          </ul>
        )}
        <StaysBehind head={head} planId={planId} acts={acts} />
        <SwapRows truck={truck} planId={planId} acts={acts} />
        <OnePiece planId={planId} truck={truck} acts={acts} />
        <TakeCase planId={planId} acts={acts} />
        <GroupEnd planId={planId} trucks={trucks} acts={acts} />
      </div>
    </Part>
  );
}

function StaysBehind({ head, planId, acts }: Pick<LoadingProps, 'head' | 'planId' | 'acts'>) {
  return head.leftOver
    .filter((each) => each.fact?.code === 'stays-behind')
    .map(({ id, label, reason }) => (
      <p key={id}>
        {label}: {reason}.{' '}
        <button
          type="button"
          className="plain"
          disabled={acts.isPending}
          onClick={() =>
            acts.mutate(async (requestId) => (await request(takePieceAlongMutation, { planId, piece: id }, { requestId })).takePieceAlong)
          }
        >
          It travels after all
        </button>
      </p>
    ));
}

function OnePiece({ planId, truck, acts }: { planId: string; truck: TruckResultOne; acts: LoadingActs }) {
  const [piece, setPiece] = useState('');
  const [reason, setReason] = useState('');
  return (
    <details>
      <summary>One piece: keep it, or excuse it from the unloading order</summary>
      <div className="fields">
        <label>
          Piece
          <select value={piece} onChange={(event) => setPiece(event.target.value)}>
            <option value="">choose</option>
            {truck.placements.map((each) => (
              <option key={each.id} value={each.id}>
                {each.label.includes(each.id) ? each.label : `${each.id}, ${each.label}`}
              </option>
            ))}
          </select>
        </label>
        <label>
          Why it need not come off in its turn
          <input value={reason} onChange={(event) => setReason(event.target.value)} />
        </label>
      </div>
      <div className="row">
        <button
          type="button"
          className="plain"
          disabled={piece === '' || acts.isPending}
          onClick={() =>
            acts.mutate(async (requestId) => (await request(keepPiecesMutation, { planId, pieces: [piece] }, { requestId })).keepPieces)
          }
        >
          Keep it where it stands
        </button>
        <button
          type="button"
          className="plain"
          disabled={piece === '' || reason.trim() === '' || acts.isPending}
          onClick={() =>
            acts.mutate(async (requestId) => (await request(waiveMutation, { planId, piece, reason }, { requestId })).waiveOrder)
          }
        >
          Excuse it from the order
        </button>
      </div>
    </details>
  );
}

function TakeCase({ planId, acts }: { planId: string; acts: LoadingActs }) {
  const [serial, setSerial] = useState('');
  return (
    <details>
      <summary>One case more</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          acts.mutate(async (requestId) => (await request(takeCaseMutation, { planId, case: serial.trim() }, { requestId })).takeCase);
        }}
      >
        <div className="fields">
          <label>
            Serial of the case, as on the register
            <input value={serial} autoCapitalize="characters" onChange={(event) => setSerial(event.target.value)} />
          </label>
        </div>
        <button type="submit" className="plain" disabled={serial.trim() === '' || acts.isPending}>
          Take it along
        </button>
      </form>
    </details>
  );
}

function GroupEnd({ planId, trucks, acts }: { planId: string; trucks: readonly string[]; acts: LoadingActs }) {
  const found = useTrucks(planId, trucks).data ?? [];
  const names = new Map(found.flatMap((truck) => truck.placements.map((each) => [each.group ?? each.label, groupOf(each)])));
  const groups = [...names.keys()].sort();
  const [chosen, setGroup] = useState('');
  const group = chosen || (groups[0] ?? '');
  const want = (end: 'door' | 'nose') =>
    acts.mutate(async (requestId) => (await request(groupEndMutation, { planId, group, end }, { requestId })).setGroupEnd);
  return (
    <details>
      <summary>A group at the door or at the nose</summary>
      <div className="fields">
        <label>
          Group
          <select value={group} onChange={(event) => setGroup(event.target.value)}>
            {groups.map((each) => (
              <option key={each} value={each}>
                {names.get(each)}
              </option>
            ))}
          </select>
        </label>
      </div>
      <div className="row">
        <button type="button" className="plain" disabled={acts.isPending} onClick={() => want('door')}>
          At the door
        </button>
        <button type="button" className="plain" disabled={acts.isPending} onClick={() => want('nose')}>
          At the nose
        </button>
      </div>
    </details>
  );
}
