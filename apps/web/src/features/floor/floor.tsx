import './floor.css';
import { Route, Routes, useParams } from 'react-router';
import type { Person } from '../../platform/person.js';
import { Faults } from '../../ui/faults.js';
import { useShow } from '../plan/use-show.js';
import { ChooseCart } from './choose-cart.js';
import { FloorPage } from './floor-page.js';
import { Front } from './front.js';
import { OneMove } from './one-move.js';
import { ReadCart } from './read-cart.js';

/** The floor of one show: a front with what to do now, and one screen a question. */
export function Floor({ me }: { me: Person }) {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const home = `/floor/${tourId}/${showId}`;
  const show = query.data;
  if (!show?.inForce)
    return (
      <FloorPage name="The floor" title={show?.name ?? 'The floor'} back={show ? `/tours/${tourId}/shows/${showId}` : '/'}>
        {query.isError ? (
          <Faults of={query.error} />
        ) : (
          <p>{show ? 'There is no plan of this show yet: it is made at the desk.' : 'Reading ...'}</p>
        )}
      </FloorPage>
    );
  const given = { me, show, plan: show.inForce, home };
  return (
    <Routes>
      <Route index element={<Front {...given} />} />
      <Route path="moves" element={<OneMove key={given.plan.id} {...given} />} />
      <Route path="carts" element={<ChooseCart {...given} />} />
      <Route path="carts/:loadId" element={<ReadCart {...given} />} />
      <Route path="*" element={<Front {...given} />} />
    </Routes>
  );
}
