import { formatLength, formatMass, formatShort, rowParts } from '#drawings';
import type { TruckResultOne } from '#pack-plan';
import { english, tell } from '#words';
import { request } from '../../platform/request.js';
import { useSettings } from '../../platform/settings.js';
import { keepRowMutation, letGoMutation } from './operations.js';
import type { LoadingActs } from './use-loading-act.js';

interface RowTableProps {
  readonly truck: TruckResultOne;
  readonly done: ReadonlySet<number>;
  readonly planId: string;
  /** null for those who may not change the load. */
  readonly acts: LoadingActs | null;
  readonly onTick: (row: number, done: boolean) => void;
}

/** Row by row for the loader: a tick when it is in, and whether it is to stay where it stands. */
export function RowTable({ truck, done, planId, acts, onTick }: RowTableProps) {
  const kept = new Map((truck.kept ?? []).map((each) => [each.piece, each.loaded]));
  return (
    <div className="floor">
      <table className="ticks">
        <thead>
          <tr>
            <th>In</th>
            <th className="num">{truck.kind ? 'Step' : 'Row'}</th>
            <th>{truck.kind ? 'Pieces, one after another' : 'Pieces, left to right'}</th>
            <th className="num opt">Mass</th>
          </tr>
        </thead>
        <tbody>
          {truck.rows.map((row) => (
            <Row
              key={row.number}
              row={row}
              truck={truck}
              kept={kept}
              done={done.has(row.number)}
              planId={planId}
              acts={acts}
              onTick={onTick}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface RowProps extends Pick<RowTableProps, 'truck' | 'planId' | 'acts' | 'onTick'> {
  readonly row: TruckResultOne['rows'][number];
  /** Piece -> whether it is loaded already, of those that stay. */
  readonly kept: ReadonlyMap<string, boolean>;
  readonly done: boolean;
}

function Row({ row, truck, kept, done, planId, acts, onTick }: RowProps) {
  const { units } = useSettings();
  const stays = row.pieces.every((id) => kept.has(id));
  return (
    <tr>
      <td>
        <label className="tickspot">
          <input
            type="checkbox"
            aria-label={`${truck.kind ? 'Step' : 'Row'} ${row.number} loaded`}
            checked={done}
            onChange={(event) => onTick(row.number, event.target.checked)}
          />
        </label>
      </td>
      <td className="num">
        <b>{row.number}</b>
      </td>
      <td>
        {rowParts(truck, row.pieces).map(({ what, pieces }, index) => (
          <div key={index}>
            {what}:{' '}
            {pieces.map(({ id, more }, at) => (
              <span key={id}>
                {at > 0 && ', '}
                <span className="mono nobreak">{id}</span>
                {more}
              </span>
            ))}
          </div>
        ))}
        <div className="quiet">
          {formatLength(row.fromMm, units)} to {formatLength(row.toMm, units)} from the nose
          {row.barAtMm !== null && `; bar at ${formatLength(row.barAtMm, units)}`}
          {(row.gapAheadMm ?? 0) > 50 && `; ${formatShort(row.gapAheadMm!, units)} free ahead of it: block or bar`}
          {row.gapAcrossMm > 250 && `; ${formatShort(row.gapAcrossMm, units)} stay free across: block or strap`}
        </div>
        {row.choice && (
          <details className="why">
            <summary>Why row {row.number} is here</summary>
            <p className="working">{tell(english.rows, row.choice)}</p>
          </details>
        )}
        {stays && <b>{row.pieces.every((id) => kept.get(id)) ? 'Loaded: stays. ' : 'Stays where it stands. '}</b>}
        {acts && <KeepButton row={row} truck={truck} stays={stays} planId={planId} acts={acts} />}
      </td>
      <td className="num opt">{formatMass(row.massKg, units)}</td>
    </tr>
  );
}

interface KeepProps extends Pick<RowProps, 'row' | 'truck' | 'planId'> {
  readonly stays: boolean;
  readonly acts: LoadingActs;
}

function KeepButton({ row, truck, stays, planId, acts }: KeepProps) {
  return (
    <button
      type="button"
      className="plain"
      disabled={acts.isPending}
      aria-label={stays ? `Let row ${row.number} go` : `Keep row ${row.number} here`}
      onClick={() =>
        acts.mutate(async (requestId) =>
          stays
            ? (await request(letGoMutation, { planId, pieces: [...row.pieces] }, { requestId })).letPiecesGo
            : (await request(keepRowMutation, { planId, truck: truck.id, row: row.number }, { requestId })).keepRow,
        )
      }
    >
      {stays ? 'Let it go' : 'Keep it here'}
    </button>
  );
}
