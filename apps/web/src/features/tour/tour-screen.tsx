import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { z } from 'zod';
import type { Tour } from '#tour-file';
import { placeName } from '#trade';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Field, Figure, Form, useTypedForm } from '../../ui/form.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { figureOrNothing } from '../../ui/typed.js';
import { DesignsPart } from './design/designs-part.js';
import { MovedNote } from './change/moved-note.js';
import { BetweenShows } from './edit/between-shows.js';
import { PlacesPart } from './places/places-part.js';
import { RemovedShows } from './removed-shows.js';
import { byDay, newShow } from './edit/new-tour.js';
import { tourQuery } from './edit/operations.js';
import { MoreShows } from './route/more-shows.js';
import type { ReadTour } from './edit/save-over.js';
import { ShowFields } from './edit/show-fields.js';
import { fieldOfNewShow, typedShow } from './edit/typed-show.js';
import { SpareSettings } from './edit/spare-settings.js';
import { useTourSave } from './edit/use-tour-save.js';
import { TravellingKit } from './edit/travelling-kit.js';
import { WholeTourPart } from './whole/whole-tour-part.js';
import { scrolls } from '../../ui/scrolls.js';

export function TourScreen({ me }: { me: Person }) {
  const { tourId = '' } = useParams();
  const query = useQuery({ queryKey: ['tour', tourId], queryFn: () => request(tourQuery, { id: tourId }) });
  return (
    <Loaded query={query}>
      {({ tour: { version, tour, removedShows }, showStates }) => (
        <Page
          title={tour.name}
          lede={`${tour.prepFrom} to ${tour.returnTo}, from ${tour.depot}. Examination rules of ${tour.jurisdictions.map((each) => placeName(each)).join(', ')}.`}
          actions={
            me.role === 'system' && (
              <Link className="btn plain" to={`/tours/${tourId}/change`}>
                Change or remove the tour
              </Link>
            )
          }
        >
          <Part number={1} title="Shows" margin={<a href={`/api/tours/${tourId}/file`}>Save the tour as a file</a>}>
            <MovedNote of={{ version, tour }} />
            <ShowTable tour={tour} states={showStates} mayChange={me.role === 'system'} />
            <RemovedShows tourId={tourId} version={version} shows={removedShows} me={me} />
            {me.role === 'system' && <MoreShows tour={tour} version={version} taken={removedShows.map((each) => each.showId)} />}
            <AddShow tour={tour} version={version} taken={removedShows.map((each) => each.showId)} />
          </Part>
          <Part number={2} title="Designs">
            <DesignsPart tour={tour} version={version} mayChange={me.role === 'system'} />
          </Part>
          <Part number={3} title="Carts between the shows">
            <BetweenShows tourId={tourId} />
          </Part>
          <Part number={4} title="The tour as a whole">
            <WholeTourPart tour={tour} me={me} />
          </Part>
          <Part number={5} title="Trucks and freight">
            <TravellingKit onFile={{ version, tour }} />
          </Part>
          <Part number={6} title="Spares of the hardware trunk">
            <SpareSettings tour={tour} version={version} />
          </Part>
          <Part number={7} title="Where plans need equally many box moves">
            <Wishes tour={tour} version={version} />
          </Part>
          <Part number={8} title="Whose examination rules hold" id="places">
            <PlacesPart tourId={tourId} me={me} />
          </Part>
        </Page>
      )}
    </Loaded>
  );
}

interface ShowState {
  readonly showId: string;
  readonly state: string;
  readonly revision?: string | null;
  readonly stops: number;
  readonly looks: number;
}

function ShowTable({ tour, states, mayChange }: { tour: Tour; states: readonly ShowState[]; mayChange: boolean }) {
  return (
    <div {...scrolls}>
      <table>
        <thead>
          <tr>
            <th>Show</th>
            <th>Venue</th>
            <th>Days</th>
            <th className="num">Hangs</th>
            <th>Plan</th>
          </tr>
        </thead>
        <tbody>
          {tour.shows.map((show) => {
            const state = states.find((each) => each.showId === show.id);
            return (
              <tr key={show.id}>
                <td>
                  <Link to={`/tours/${tour.id}/shows/${show.id}`}>{show.name}</Link>
                  {mayChange && (
                    <div>
                      <small>
                        <Link to={`/tours/${tour.id}/shows/${show.id}/change`} aria-label={`Change or copy ${show.name}`}>
                          Change, copy
                        </Link>
                      </small>
                    </div>
                  )}
                </td>
                <td>{show.venue}</td>
                <td>{show.from === show.to ? show.from : `${show.from} to ${show.to}`}</td>
                <td className="num">{show.hangs.length}</td>
                <td>
                  {!state
                    ? 'no plan yet'
                    : `${state.state === 'released' ? `revision ${state.revision}` : 'draft'}: ${state.stops} to stop for, ${state.looks} to look at`}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function useSave(of: ReadTour, isDirty: boolean) {
  const client = useQueryClient();
  const save = useTourSave(of, isDirty);
  return useMutation({
    mutationFn: (change: (tour: Tour) => Tour) => save(change),
    onSuccess: () => client.invalidateQueries(),
  });
}

function AddShow({ tour, version, taken }: { tour: Tour; version: number; taken: readonly string[] }) {
  const nothing = { show: '', venue: '', timeZone: tour.shows[0]?.timeZone ?? 'Europe/London', from: '', to: '' };
  const form = useTypedForm(typedShow, nothing);
  const save = useSave({ version, tour }, form.formState.isDirty);
  const add = (typed: z.output<typeof typedShow>) =>
    save.mutate(
      (of) => ({
        ...of,
        shows: byDay([...of.shows, newShow(typed, of.shows[0]?.loadRule ?? '', [...taken, ...tour.shows.map((each) => each.id)])]),
      }),
      { onSuccess: () => form.reset(nothing) },
    );
  return (
    <details>
      <summary>Add a show</summary>
      <Form form={form} onSubmit={add} error={save.error} fieldOf={fieldOfNewShow}>
        <div className="fields">
          <Field name="show" label="Name" />
          <ShowFields />
        </div>
        <button type="submit" disabled={save.isPending}>
          Add the show
        </button>
      </Form>
    </details>
  );
}

const weight = figureOrNothing('a number from 0 to 1000000, or nothing', { min: 0, max: 1e6 });
const typedWishes = z.object({ dueSoon: weight, wear: weight });

/** Weights are set here or the usual ones hold. */
function Wishes({ tour, version }: { tour: Tour; version: number }) {
  const form = useTypedForm(typedWishes, { dueSoon: String(tour.wishes?.dueSoon ?? ''), wear: String(tour.wishes?.wear ?? '') });
  const save = useSave({ version, tour }, form.formState.isDirty);
  const weigh = ({ dueSoon, wear }: z.output<typeof typedWishes>) => {
    const wishes = { ...(dueSoon === undefined ? {} : { dueSoon }), ...(wear === undefined ? {} : { wear }) };
    save.mutate(({ wishes: _wishes, ...rest }) => (Object.keys(wishes).length === 0 ? rest : { ...rest, wishes }));
  };
  return (
    <Form form={form} onSubmit={weigh} error={save.error}>
      <p>
        The plan then takes the fewest carts, then boxes that do not fall due within 30 days after the tour, then the less used, with like
        boxes left and right.
      </p>
      <details>
        <summary>Weigh these otherwise</summary>
        <div className="fields">
          <Figure name="dueSoon" label="A box that falls due soon" description="empty: the usual 1000" />
          <Figure name="wear" label="Each use of a box" description="empty: the usual 1" />
        </div>
        <button type="submit" className="plain" disabled={save.isPending}>
          Save the weights
        </button>
      </details>
    </Form>
  );
}
