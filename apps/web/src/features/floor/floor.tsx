import './floor.css';
import { useState } from 'react';
import { Route, Routes, useParams } from 'react-router';
import type { Person } from '../../platform/person.js';
import { Faults } from '../../ui/faults.js';
import { useShow } from '../plan/use-show.js';
import { ChooseCart } from './choose-cart.js';
import { ChooseTruck } from './choose-truck.js';
import { FloorPage } from './floor-page.js';
import { Front } from './front.js';
import type { Told } from './on-floor.js';
import { OneMove } from './one-move.js';
import { OneRow } from './one-row.js';
import { ReadCart } from './read-cart.js';

/** The floor of one show: a front with what to do now, and one screen a question. */
export function Floor({ me }: { me: Person }) {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const [told, tell] = useState<Told | null>(null);
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
  const given = { me, show, plan: show.inForce, home, told, tell };
  return (
    <Routes>
      <Route index element={<Front {...given} />} />
      <Route path="moves" element={<OneMove key={given.plan.id} {...given} />} />
      <Route path="carts" element={<ChooseCart {...given} />} />
      <Route path="carts/:loadId" element={<ReadCart {...given} />} />
      <Route path="trucks" element={<ChooseTruck {...given} />} />
      <Route path="trucks/:truckId" element={<OneRow {...given} />} />
      <Route path="*" element={<Front {...given} />} />
    </Routes>
  );
}
