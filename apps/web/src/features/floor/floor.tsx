import './floor.css';
import { useState } from 'react';
import { Route, Routes, useParams } from 'react-router';
import type { Person } from '../../platform/person.js';
import { Faults } from '../../ui/faults.js';
import { useShow } from '../plan/use-show.js';
import { ChooseCart } from './cart/choose-cart.js';
import { FloorPage } from './page/floor-page.js';
import { Front } from './front.js';
import type { Told } from './page/on-floor.js';
import { ChooseHang } from './fly/choose-hang.js';
import { FlyHang } from './fly/fly-hang.js';
import { CannotMove } from './moves/cannot-move.js';
import { StandsOtherwise } from './moves/stands-otherwise.js';
import { OneMove } from './moves/one-move.js';
import { ReadCart } from './cart/read-cart.js';
import { ReportFault } from './fault/report-fault.js';
import { Bench } from './prep/bench.js';
import { Leaves, PickList } from './prep/lists.js';
import { PrepHome } from './prep/prep-home.js';
import { Splays } from './prep/splays.js';
import { Trunks } from './prep/trunks.js';
import { CountHome } from './return/count-home.js';
import { Missing } from './return/missing.js';
import { ReturnCart } from './return/return-cart.js';
import { ChooseTruck } from './truck/choose-truck.js';
import { LoadedDifferently } from './truck/loaded-differently.js';
import { OneRow } from './truck/one-row.js';
import { ReturnHome } from './return/return-home.js';

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
      <Route path="moves/cannot" element={<CannotMove {...given} />} />
      <Route path="moves/stands/:cartId" element={<StandsOtherwise {...given} />} />
      <Route path="carts" element={<ChooseCart {...given} />} />
      <Route path="carts/:loadId" element={<ReadCart {...given} />} />
      <Route path="trucks" element={<ChooseTruck {...given} />} />
      <Route path="trucks/:truckId" element={<OneRow {...given} />} />
      <Route path="trucks/:truckId/differently" element={<LoadedDifferently {...given} />} />
      <Route path="fly" element={<ChooseHang {...given} />} />
      <Route path="fly/:hangId" element={<FlyHang {...given} />} />
      <Route path="prep" element={<PrepHome {...given} />} />
      <Route path="prep/pick" element={<PickList {...given} />} />
      <Route path="prep/bench" element={<Bench {...given} />} />
      <Route path="prep/splays" element={<Splays {...given} />} />
      <Route path="prep/splays/:loadId" element={<Splays {...given} />} />
      <Route path="prep/trunks" element={<Trunks {...given} />} />
      <Route path="prep/trunks/:trunkId" element={<Trunks {...given} />} />
      <Route path="prep/leaves" element={<Leaves {...given} />} />
      <Route path="return" element={<ReturnHome {...given} />} />
      <Route path="return/missing" element={<Missing {...given} />} />
      <Route path="return/count" element={<CountHome {...given} />} />
      <Route path="return/carts/:cartId" element={<ReturnCart {...given} />} />
      <Route path="fault" element={<ReportFault {...given} />} />
      <Route path="fault/:itemId" element={<ReportFault {...given} />} />
      <Route path="*" element={<Front {...given} />} />
    </Routes>
  );
}
