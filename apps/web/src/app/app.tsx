import { useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import { Route, Routes, useLocation } from 'react-router';
import { graphql } from '#contracts';
import { People } from '../features/account/people.js';
import { Venues } from '../features/venue/venues.js';
import { SignIn } from '../features/account/sign-in.js';
import { ConfirmCart } from '../features/cart/confirm-cart.js';
import { Moves } from '../features/cart/moves.js';
import { Counts } from '../features/count/counts.js';
import { Dates } from '../features/due/dates.js';
import { Fleet } from '../features/fleet/fleet.js';
import { HangEditor } from '../features/hang/hang-editor.js';
import { PickScreen } from '../features/hang/pick-screen.js';
import { RunningScreen } from '../features/hang/running-screen.js';
import { Print } from '../features/print/print.js';
import { ItemScreen } from '../features/register/item-screen.js';
import { Register } from '../features/register/register.js';
import { Show } from '../features/show/show.js';
import { Today } from '../features/today/today.js';
import { TourScreen } from '../features/tour/tour-screen.js';
import { Tours } from '../features/tour/tours.js';
import { Import } from '../features/transfer/import.js';
import { TruckScreen } from '../features/truck/truck-screen.js';
import { OutboxProvider } from '../platform/outbox/outbox.js';
import { OutboxNote } from '../platform/outbox/outbox-note.js';
import { rememberPerson } from '../platform/last-read.js';
import { useLive } from '../platform/live/use-live.js';
import { request } from '../platform/request.js';
import { Page } from '../ui/page.js';
import { floorActions } from './floor-actions.js';
import { Header } from './header.js';
import type { Person } from '../platform/person.js';

const meQuery = graphql(`query Me { me { id name role } }`);

export function App() {
  const me = useQuery({ queryKey: ['me'], queryFn: () => request(meQuery), staleTime: 0 });
  const printing = useLocation().pathname.startsWith('/print/');
  if (me.isPending)
    return (
      <div className="sheet">
        <p className="quiet">Reading ...</p>
      </div>
    );
  if (!me.data?.me)
    return (
      <div className="sheet">
        <SignIn offline={me.isError ? me.error : undefined} />
      </div>
    );
  return <SignedInApp person={me.data.me} printing={printing} />;
}

function SignedInApp({ person, printing }: { person: Person; printing: boolean }) {
  useLive();
  useEffect(() => rememberPerson(person.id), [person.id]);
  return (
    <OutboxProvider key={person.id} person={person} kinds={floorActions}>
      <div className={printing ? undefined : 'sheet'}>
        {!printing && <Header me={person} />}
        {!printing && <OutboxNote />}
        <Routes>
          <Route path="/" element={<Today me={person} />} />
          <Route path="/tours" element={<Tours me={person} />} />
          <Route path="/tours/:tourId" element={<TourScreen />} />
          <Route path="/tours/:tourId/shows/:showId" element={<Show me={person} />} />
          <Route path="/tours/:tourId/shows/:showId/hangs" element={<HangEditor me={person} />} />
          <Route path="/tours/:tourId/shows/:showId/hangs/:hangId/picks/:hole" element={<PickScreen me={person} />} />
          <Route path="/tours/:tourId/shows/:showId/hangs/:hangId/running" element={<RunningScreen me={person} />} />
          <Route path="/tours/:tourId/shows/:showId/moves" element={<Moves />} />
          <Route path="/tours/:tourId/shows/:showId/carts" element={<ConfirmCart />} />
          <Route path="/tours/:tourId/shows/:showId/counts" element={<Counts me={person} />} />
          <Route path="/tours/:tourId/shows/:showId/trucks/:truckId" element={<TruckScreen me={person} />} />
          <Route path="/register" element={<Register me={person} />} />
          <Route path="/register/:itemId" element={<ItemScreen me={person} />} />
          <Route path="/fleet" element={<Fleet me={person} />} />
          <Route path="/dates" element={<Dates />} />
          <Route path="/venues" element={<Venues me={person} />} />
          <Route path="/people" element={<People me={person} />} />
          <Route path="/import" element={<Import me={person} />} />
          <Route path="/print/:tourId/:showId/:what" element={<Print />} />
          <Route path="*" element={<Page title="Nothing here">There is no such page. Go back to Today.</Page>} />
        </Routes>
      </div>
    </OutboxProvider>
  );
}
