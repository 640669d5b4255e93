import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { drawStacks } from '#drawings';
import { request } from '../../platform/request.js';
import { Drawing } from '../../ui/drawing.js';
import { Faults } from '../../ui/faults.js';
import { Notes } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { tickMutation } from '../show/operations.js';
import { useShow } from '../show/use-show.js';

/** The floor as it stands, the moves in an order that can be carried out, the floor as it will be. */
export function Moves() {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const client = useQueryClient();
  const tick = useMutation({
    mutationFn: (what: { planId: string; what: string; done: boolean }) => request(tickMutation, what),
    onSuccess: () => client.invalidateQueries({ queryKey: ['show', tourId, showId] }),
  });
  return (
    <Loaded query={query}>
      {({ name, inForce }) => {
        if (!inForce) return <Page title="Box moves">There is no plan of this show yet.</Page>;
        const { carts, findings } = inForce.plan;
        const moving = new Set(carts.moves.map((each) => each.box));
        const touched = new Set([...carts.moves.flatMap((each) => [each.from, each.to]), ...carts.loads.map((each) => each.cart ?? '')]);
        const proof = carts.status === 'optimal' ? 'no shorter list exists' : `at least ${carts.bound} are needed`;
        return (
          <Page
            title="Box moves"
            lede={
              <>
                <Link to={`/tours/${tourId}/shows/${showId}`}>{name}</Link> · {carts.boxMoves} moves, {proof}
              </>
            }
          >
            <Part number={1} title="The moves" margin={<Notes findings={findings} section="carts" />}>
              <Faults of={tick.error} />
              <div className="scroll floor">
                <table className="ticks">
                  <thead>
                    <tr>
                      <th>Done</th>
                      <th className="num">Round</th>
                      <th>Box</th>
                      <th>From</th>
                      <th>To</th>
                      <th>Why</th>
                    </tr>
                  </thead>
                  <tbody>
                    {carts.moves.map((move) => {
                      const what = `move ${move.number}`;
                      return (
                        <tr key={move.number}>
                          <td>
                            <input
                              type="checkbox"
                              aria-label={`Move ${move.number} done`}
                              checked={inForce.ticks.includes(what)}
                              onChange={(event) => tick.mutate({ planId: inForce.id, what, done: event.target.checked })}
                            />
                          </td>
                          <td className="num">{move.round}</td>
                          <td className="mono">{move.box}</td>
                          <td className="mono">{move.from}</td>
                          <td className="mono">{move.to}</td>
                          <td>{move.why}</td>
                        </tr>
                      );
                    })}
                  </tbody>
                </table>
              </div>
              {carts.moves.length === 0 && <p>Every cart stands as it is wanted.</p>}
            </Part>
            <Part
              number={2}
              title="The floor as it stands"
              margin={
                <p className="note">
                  <b>Hatched</b> boxes move.
                </p>
              }
            >
              <Drawing
                of={drawStacks(
                  carts.floorBefore.carts.filter((each) => touched.has(each.cart)),
                  moving,
                )}
                wide
              />
              {carts.floorBefore.loose.length > 0 && (
                <p>
                  On the floor: <span className="mono">{carts.floorBefore.loose.join(', ')}</span>
                </p>
              )}
            </Part>
            <Part number={3} title="The floor as it will be">
              <Drawing of={drawStacks(carts.floorAfter.carts.filter((each) => touched.has(each.cart)))} wide />
              {carts.floorAfter.loose.length > 0 && (
                <p>
                  On the floor: <span className="mono">{carts.floorAfter.loose.join(', ')}</span>
                </p>
              )}
            </Part>
          </Page>
        );
      }}
    </Loaded>
  );
}
