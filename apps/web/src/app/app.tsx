import { type ComponentType, type LazyExoticComponent, Suspense, lazy, useEffect } from 'react';
import { Navigate, Route, Routes, useLocation, useParams } from 'react-router';
import { Door, FirstPassword } from '../features/account/sign-in.js';
import { Today } from '../features/today/today.js';
import { OutboxProvider } from '../platform/outbox/outbox.js';
import { OutboxNote } from '../platform/outbox/outbox-note.js';
import { keepScreens } from '../platform/kept-screens.js';
import { rememberPerson } from '../platform/last-read.js';
import { useMe } from '../platform/me.js';
import { useLive } from '../platform/live/use-live.js';
import { useIsOnFloor } from '../platform/settings.js';
import { OnePersonLine } from '../ui/one-person-line.js';
import { Page } from '../ui/page.js';
import { floorActions } from './floor-actions.js';
import { Header } from './header.js';
import type { Person } from '../platform/person.js';

type Load<Props> = () => Promise<{ default: ComponentType<Props> }>;
const waiting: (() => Promise<unknown>)[] = [];

/** A screen is read when it is first opened, or when the first has stood for a while: a dock without a signal needs them all. */
function screen<Props>(load: Load<Props>): LazyExoticComponent<ComponentType<Props>> {
  waiting.push(load);
  return lazy(load);
}

const People = screen(async () => ({ default: (await import('../features/account/people.js')).People }));
const House = screen(async () => ({ default: (await import('../features/house/house.js')).House }));
const Alarms = screen(async () => ({ default: (await import('../features/house/alarms.js')).Alarms }));
const Log = screen(async () => ({ default: (await import('../features/log/log.js')).Log }));
const Moves = screen(async () => ({ default: (await import('../features/cart/moves.js')).Moves }));
const Counts = screen(async () => ({ default: (await import('../features/count/counts.js')).Counts }));
const Dates = screen(async () => ({ default: (await import('../features/due/dates.js')).Dates }));
const DatesPrint = screen(async () => ({ default: (await import('../features/due/dates-print.js')).DatesPrint }));
const Fleet = screen(async () => ({ default: (await import('../features/fleet/fleet.js')).Fleet }));
const Floor = screen(async () => ({ default: (await import('../features/floor/floor.js')).Floor }));
const HangEditor = screen(async () => ({ default: (await import('../features/hang/hang-editor.js')).HangEditor }));
const DesignEditor = screen(async () => ({ default: (await import('../features/hang/hang-editor.js')).DesignEditor }));
const PickScreen = screen(async () => ({ default: (await import('../features/hang/pick-screen.js')).PickScreen }));
const RunningScreen = screen(async () => ({ default: (await import('../features/hang/running-screen.js')).RunningScreen }));
const InspectionPrint = screen(async () => ({ default: (await import('../features/inspection/inspection-print.js')).InspectionPrint }));
const ReportScreen = screen(async () => ({ default: (await import('../features/inspection/report-page.js')).ReportScreen }));
const ReportPrint = screen(async () => ({ default: (await import('../features/inspection/report-page.js')).ReportPrint }));
const ExtractScreen = screen(async () => ({ default: (await import('../features/inspection/extract-page.js')).ExtractScreen }));
const ExtractPrint = screen(async () => ({ default: (await import('../features/inspection/extract-page.js')).ExtractPrint }));
const HangsWithPrint = screen(async () => ({ default: (await import('../features/inspection/hangs-with-print.js')).HangsWithPrint }));
const PrintList = screen(async () => ({ default: (await import('../features/print/print-list.js')).PrintList }));
const Print = screen(async () => ({ default: (await import('../features/print/print.js')).Print }));
const KitOfOthers = screen(async () => ({ default: (await import('../features/lent/kit-of-others.js')).KitOfOthers }));
const LentNotePrint = screen(async () => ({ default: (await import('../features/lent/lent-note.js')).LentNotePrint }));
const ItemScreen = screen(async () => ({ default: (await import('../features/register/item-screen.js')).ItemScreen }));
const Register = screen(async () => ({ default: (await import('../features/register/listed/register.js')).Register }));
const Show = screen(async () => ({ default: (await import('../features/show/show.js')).Show }));
const TourScreen = screen(async () => ({ default: (await import('../features/tour/tour-screen.js')).TourScreen }));
const ChangeTour = screen(async () => ({ default: (await import('../features/tour/change/change-tour.js')).ChangeTour }));
const ChangeShow = screen(async () => ({ default: (await import('../features/tour/change/change-show.js')).ChangeShow }));
const Begin = screen(async () => ({ default: (await import('../features/begin/begin.js')).Begin }));
const RulesScreen = screen(async () => ({ default: (await import('../features/rules/rules-screen.js')).RulesScreen }));
const Tours = screen(async () => ({ default: (await import('../features/tour/tours.js')).Tours }));
const Waiting = screen(async () => ({ default: (await import('../features/edition/waiting-screen.js')).WaitingScreen }));
const Import = screen(async () => ({ default: (await import('../features/transfer/import.js')).Import }));
const Labels = screen(async () => ({ default: (await import('../features/label/labels.js')).Labels }));
const Venues = screen(async () => ({ default: (await import('../features/venue/venues.js')).Venues }));
const Visits = screen(async () => ({ default: (await import('../features/visit/visits.js')).Visits }));
const VisitScreen = screen(async () => ({ default: (await import('../features/visit/visit-screen.js')).VisitScreen }));
const TruckScreen = screen(async () => ({ default: (await import('../features/truck/truck-screen.js')).TruckScreen }));

export function App() {
  const me = useMe();
  const printing = useLocation().pathname.startsWith('/print/');
  const isSignedIn = Boolean(me.data?.me);
  useEffect(() => {
    if (!isSignedIn) return undefined;
    const later = setTimeout(() => {
      for (const load of waiting) void load().catch(() => undefined);
      void keepScreens().catch(() => undefined);
    }, 4000);
    return () => clearTimeout(later);
  }, [isSignedIn]);
  if (me.isPending)
    return (
      <div className="sheet">
        <p className="quiet">Reading ...</p>
      </div>
    );
  if (!me.data?.me)
    return (
      <div className="sheet">
        <Door offline={me.isError ? me.error : undefined} />
      </div>
    );
  if (me.data.me.mustChange)
    return (
      <div className="sheet">
        <FirstPassword />
      </div>
    );
  return <SignedInApp person={me.data.me} printing={printing} />;
}

/** What stands above every screen of the desk. */
const Above = ({ me }: { me: Person }) => (
  <>
    <Header me={me} />
    <OutboxNote />
    <OnePersonLine />
  </>
);

function SignedInApp({ person, printing }: { person: Person; printing: boolean }) {
  useLive();
  const bare = useIsOnFloor() || printing;
  useEffect(() => rememberPerson(person.id), [person.id]);
  return (
    <OutboxProvider key={person.id} person={person} kinds={floorActions}>
      <div className={bare ? undefined : 'sheet'}>
        {!bare && <Above me={person} />}
        <Suspense fallback={<p className="quiet">Reading ...</p>}>
          <Routes>
            <Route path="/" element={<Today me={person} />} />
            <Route path="/tours" element={<Tours me={person} />} />
            <Route path="/tours/:tourId" element={<TourScreen me={person} />} />
            <Route path="/tours/:tourId/change" element={<ChangeTour me={person} />} />
            <Route path="/tours/:tourId/designs/:designId" element={<DesignEditor me={person} />} />
            <Route path="/tours/:tourId/shows/:showId" element={<Show me={person} />} />
            <Route path="/tours/:tourId/shows/:showId/change" element={<ChangeShow me={person} />} />
            <Route path="/tours/:tourId/shows/:showId/hangs" element={<HangEditor me={person} />} />
            <Route path="/tours/:tourId/shows/:showId/hangs/:hangId/picks/:hole" element={<PickScreen me={person} />} />
            <Route path="/tours/:tourId/shows/:showId/hangs/:hangId/running" element={<RunningScreen me={person} />} />
            <Route path="/tours/:tourId/shows/:showId/print" element={<PrintList />} />
            <Route path="/tours/:tourId/shows/:showId/moves" element={<Moves />} />
            <Route path="/tours/:tourId/shows/:showId/carts" element={<ToFloor />} />
            <Route path="/tours/:tourId/shows/:showId/counts" element={<Counts me={person} />} />
            <Route path="/tours/:tourId/shows/:showId/trucks/:truckId" element={<TruckScreen me={person} />} />
            <Route path="/floor/:tourId/:showId/*" element={<Floor me={person} />} />
            <Route path="/register" element={<Register me={person} />} />
            <Route path="/register-extract" element={<ExtractScreen />} />
            <Route path="/register/:itemId/records/:recordId" element={<ReportScreen />} />
            <Route path="/register/:itemId" element={<ItemScreen me={person} />} />
            <Route path="/kit-of-others" element={<KitOfOthers me={person} />} />
            <Route path="/fleet" element={<Fleet me={person} />} />
            <Route path="/begin" element={<Begin />} />
            <Route path="/rules" element={<RulesScreen me={person} />} />
            <Route path="/dates" element={<Dates />} />
            <Route path="/visits" element={<Visits me={person} />} />
            <Route path="/visits/:visitId" element={<VisitScreen me={person} />} />
            <Route path="/venues" element={<Venues me={person} />} />
            <Route path="/labels/:tourId?/:showId?" element={<Labels />} />
            <Route path="/waiting" element={<Waiting me={person} />} />
            <Route path="/log" element={<Log me={person} />} />
            <Route path="/house" element={<House me={person} />} />
            <Route path="/house/alarms" element={<Alarms />} />
            <Route path="/people" element={<People me={person} />} />
            <Route path="/import" element={<Import me={person} />} />
            <Route path="/print/kit-of-others/:itemId" element={<LentNotePrint />} />
            <Route path="/print/dates" element={<DatesPrint />} />
            <Route path="/print/extract" element={<ExtractPrint />} />
            <Route path="/print/records/:itemId/:recordId" element={<ReportPrint />} />
            <Route path="/print/:tourId/:showId/inspection" element={<InspectionPrint />} />
            <Route path="/print/:tourId/:showId/hangs-with" element={<HangsWithPrint />} />
            <Route path="/print/:tourId/:showId/:what" element={<Print />} />
            <Route path="*" element={<Page title="Nothing here">There is no such page. Go back to Today.</Page>} />
          </Routes>
        </Suspense>
      </div>
    </OutboxProvider>
  );
}

/** Carts are confirmed on the floor; the address before that is on cards that hang on carts. */
function ToFloor() {
  const { tourId = '', showId = '' } = useParams();
  const load = new URLSearchParams(useLocation().search).get('load');
  return <Navigate replace to={`/floor/${tourId}/${showId}/carts${load === null ? '' : `/${encodeURIComponent(load)}`}`} />;
}
