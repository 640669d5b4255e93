import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { drawTruckPlan, drawTruckSide, formatMass } from '#drawings';
import { request } from '../../platform/request.js';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Faults } from '../../ui/faults.js';
import { Notes } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { tickMutation } from '../show/operations.js';
import { useShow } from '../show/use-show.js';

/** One truck for the loader: rows from the nose with ticks, then from the door at the venue. */
export function TruckScreen() {
  const { tourId = '', showId = '', truckId = '' } = useParams();
  const { units } = useSettings();
  const query = useShow(tourId, showId);
  const client = useQueryClient();
  const tick = useMutation({
    mutationFn: (what: { planId: string; what: string; done: boolean }) => request(tickMutation, what),
    onSuccess: () => client.invalidateQueries({ queryKey: ['show', tourId, showId] }),
  });
  return (
    <Loaded query={query}>
      {({ name, inForce }) => {
        const truck = inForce?.plan.truck.trucks.find((each) => each.id === truckId);
        if (!inForce || !truck) return <Page title={truckId}>This truck is in no plan of the show.</Page>;
        const pieces = new Map(truck.placements.map((each) => [each.id, each]));
        const done = new Set(truck.rows.filter((row) => inForce.ticks.includes(`${truck.id} row ${row.number}`)).map((row) => row.number));
        return (
          <Page
            title={`Truck ${truck.id}`}
            lede={
              <>
                <Link to={`/tours/${tourId}/shows/${showId}`}>{name}</Link> · {done.size} of {truck.rows.length} rows loaded ·{' '}
                {formatMass(truck.massKg, units)}
              </>
            }
            actions={
              <Link className="btn plain" to={`/print/${tourId}/${showId}/trucks`} target="_blank">
                Print the truck sheets
              </Link>
            }
          >
            <Part number={1} title="Load from the nose" margin={<Notes findings={inForce.plan.findings} section="truck" />}>
              <Drawing of={drawTruckPlan(truck, done)} wide />
              <Drawing of={drawTruckSide(truck)} wide />
              <Faults of={tick.error} />
              <div className="floor">
                <table className="ticks">
                  <thead>
                    <tr>
                      <th>In</th>
                      <th className="num">Row</th>
                      <th>Pieces, left to right</th>
                      <th className="num">Mass</th>
                    </tr>
                  </thead>
                  <tbody>
                    {truck.rows.map((row) => (
                      <tr key={row.number}>
                        <td>
                          <input
                            type="checkbox"
                            aria-label={`Row ${row.number} loaded`}
                            checked={done.has(row.number)}
                            onChange={(event) =>
                              tick.mutate({ planId: inForce.id, what: `${truck.id} row ${row.number}`, done: event.target.checked })
                            }
                          />
                        </td>
                        <td className="num">
                          <b>{row.number}</b>
                        </td>
                        <td>
                          {row.pieces.map((id) => {
                            const piece = pieces.get(id)!;
                            return (
                              <div key={id}>
                                <span className="mono">{id}</span> {piece.label.replace(` ${id}`, '')}
                                {piece.zMm > 0 ? ', on top' : ''}
                                {piece.turned ? ', turned' : ''}
                                {piece.tag ? ` ■ ${piece.tag}` : ''}
                              </div>
                            );
                          })}
                          {row.barAtMm !== null && <div className="quiet">Bar at {(row.barAtMm / 1000).toFixed(2)} m</div>}
                          {row.gapAcrossMm > 250 && <div className="quiet">{row.gapAcrossMm} mm stay free across: block or strap</div>}
                        </td>
                        <td className="num">{formatMass(row.massKg, units)}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </div>
            </Part>
            <Part number={2} title="Unload from the door">
              <ol>
                {truck.unloadingOrder.map((id) => (
                  <li key={id}>
                    <span className="mono">{id}</span> {pieces.get(id)!.label.replace(` ${id}`, '')}
                  </li>
                ))}
              </ol>
            </Part>
            <Part number={3} title="Axles" margin={<p className="caution">{inForce.plan.truck.caution}</p>}>
              <table>
                <thead>
                  <tr>
                    <th>Axle</th>
                    <th className="num">Load</th>
                    <th className="num">Limit</th>
                  </tr>
                </thead>
                <tbody>
                  {truck.axles.map((axle) => (
                    <tr key={axle.axle}>
                      <td>{axle.axle}</td>
                      <td className="num">{formatMass(axle.loadKg, units)}</td>
                      <td className="num">{axle.limitKg === null ? 'no limit on file' : formatMass(axle.limitKg, units)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </Part>
          </Page>
        );
      }}
    </Loaded>
  );
}
