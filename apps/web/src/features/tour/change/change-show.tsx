import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from 'react-router';
import { useFormContext } from 'react-hook-form';
import type { LoadRule, Show, Tour, Venue } from '#tour-file';
import type { Person } from '../../../platform/person.js';
import { type AnswerOf, request } from '../../../platform/request.js';
import { Choice, Field, Form, Tick, useTypedForm } from '../../../ui/form.js';
import { Loaded, Page, Part } from '../../../ui/page.js';
import { byDay } from '../edit/new-tour.js';
import { rulesQuery, tourQuery } from '../edit/operations.js';
import { ShowFields } from '../edit/show-fields.js';
import { fieldOfNewShow } from '../edit/typed-show.js';
import { useTourSave } from '../edit/use-tour-save.js';
import { BeamFields } from './beam-fields.js';
import { type TypedShow, changedShow, showOf, typedOfShow } from './changed-show.js';
import { CopyShow } from './copy-show.js';
import { chooseVenue, removeShow, showVenueQuery } from '../edit/removal-operations.js';
import { RemovePart } from './remove-part.js';
import type { Moved } from './moved-note.js';
import { WhatBreaks } from './what-breaks.js';

type TourOnFile = AnswerOf<typeof tourQuery>['tour'];

/** What a show is besides its hangs: name, days, venue, rules; its copy and its removal. */
export function ChangeShow({ me }: { me: Person }) {
  const { tourId = '', showId = '' } = useParams();
  const tour = useQuery({ queryKey: ['tour', tourId], queryFn: () => request(tourQuery, { id: tourId }) });
  const rules = useQuery({ queryKey: ['house-rules'], queryFn: () => request(rulesQuery) });
  const venues = useQuery({ queryKey: ['venues', tourId, showId], queryFn: () => request(showVenueQuery, { tourId, showId }) });
  if (me.role !== 'system') return <Page title="Change the show">The system tech changes shows.</Page>;
  return (
    <Loaded query={tour}>
      {({ tour: onFile }) => {
        const show = onFile.tour.shows.find((each) => each.id === showId);
        if (!show) return <Page title="Change the show">There is no such show on this tour.</Page>;
        return (
          <Page title={`Change ${show.name}`} lede={<Back tour={onFile.tour} show={show} />}>
            <Part number={1} title="The show">
              <Loaded query={rules}>
                {(house) => (
                  <Loaded query={venues}>
                    {(places) => (
                      <ShowForm
                        onFile={onFile}
                        show={show}
                        rules={(house.rules as { loadRules: LoadRule[] }).loadRules}
                        venues={places.venues}
                        venueId={places.venueOfShow?.id ?? ''}
                      />
                    )}
                  </Loaded>
                )}
              </Loaded>
            </Part>
            <Part number={2} title="Copy the show">
              <CopyShow onFile={onFile} show={show} />
            </Part>
            <Part number={3} title="Remove the show">
              <Removal onFile={onFile} show={show} />
            </Part>
          </Page>
        );
      }}
    </Loaded>
  );
}

const Back = ({ tour, show }: { tour: Tour; show: Show }) => (
  <>
    <Link to={`/tours/${tour.id}`}>{tour.name}</Link> · <Link to={`/tours/${tour.id}/shows/${show.id}`}>{show.name}</Link> ·{' '}
    <Link to={`/tours/${tour.id}/shows/${show.id}/hangs`}>its hangs</Link>
  </>
);

function useSaveShow(onFile: TourOnFile, show: Show, venueId: string, isDirty: boolean) {
  const { tour } = onFile;
  const save = useTourSave(onFile, isDirty);
  const client = useQueryClient();
  const navigate = useNavigate();
  return useMutation({
    mutationFn: async (typed: TypedShow) => {
      await save((of) => ({ ...of, shows: byDay(of.shows.map((each) => (each.id === show.id ? showOf(each, typed) : each))) }));
      if (typed.venueId !== venueId) await request(chooseVenue, { tourId: tour.id, showId: show.id, venueId: typed.venueId || null });
    },
    onSuccess: async (_saved, typed) => {
      await client.invalidateQueries();
      const isMoved = typed.from !== show.from || typed.to !== show.to;
      const moved: Moved = { showId: show.id, name: typed.show, from: show.from, to: show.to };
      await navigate(`/tours/${tour.id}`, { state: isMoved ? { moved } : null });
    },
  });
}

function ShowForm({
  onFile,
  show,
  rules,
  venues,
  venueId,
}: {
  onFile: TourOnFile;
  show: Show;
  rules: readonly LoadRule[];
  venues: readonly { readonly id: string; readonly venue: Venue }[];
  venueId: string;
}) {
  const form = useTypedForm(changedShow, typedOfShow(show, venueId));
  const { loadRule } = show;
  const save = useSaveShow(onFile, show, venueId, form.formState.isDirty);
  const known = rules.some((each) => each.id === loadRule) ? [] : [[loadRule, loadRule] as const];
  return (
    <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error} fieldOf={fieldOfNewShow}>
      <div className="fields">
        <Field name="show" label="Name" />
        <ShowFields />
        <Choice
          name="venueId"
          label="Venue on file"
          description="its points and doors; the words of the show stay as they are typed"
          choices={[['', 'none'], ...venues.map((each) => [each.id, each.venue.name] as const)]}
        />
        <Choice
          name="loadRule"
          label="Load rule"
          choices={[...known, ...rules.map((each) => [each.id, `${each.id}: ${each.title}`] as const)]}
        />
      </div>
      <WhatBreaks tour={onFile.tour} showId={show.id} />
      <PlaceFields rules={rules} />
      <p className="quiet">
        Days lie within the tour’s, {onFile.tour.prepFrom} to {onFile.tour.returnTo}:{' '}
        <Link to={`/tours/${onFile.tour.id}/change`}>change those</Link> first where a show goes beyond. A plan that was made before says
        what changed and is stale until it is made again.
      </p>
      <button type="submit" disabled={save.isPending}>
        Save the show
      </button>
    </Form>
  );
}

/** Who is below, what the weather does, and where things are. */
function PlaceFields({ rules }: { rules: readonly LoadRule[] }) {
  return (
    <>
      <Tick name="personsBelow" label="Persons can be below the load" />
      <Tick name="movesOverPersons" label="Loads are moved while persons are below" />
      <Tick name="outdoor" label="Outdoors" />
      <div className="fields">
        <UseCaseField rules={rules} />
        <Field name="datum" label="Datum" description="where x and y of the stage start, for somebody with a tape" />
        <Field name="windAction" label="Beyond the wind limit" description="what is done then" />
        <Field name="hangsApartMm" label="Hangs stay apart by, mm" description="nearer is told; where nothing is said only what touches" />
      </div>
      <BeamFields />
    </>
  );
}

/** The use cases of the load rule that is chosen; one that it does not have is kept until another is. */
function UseCaseField({ rules }: { rules: readonly LoadRule[] }) {
  const { watch } = useFormContext<{ loadRule: string; useCase: string }>();
  const [chosen, onFile] = [watch('loadRule'), watch('useCase')];
  const names = rules.find((each) => each.id === chosen)?.useCases?.cases.map((each) => each.useCase) ?? [];
  const kept = onFile === '' || names.includes(onFile) ? [] : [onFile];
  return (
    <Choice
      name="useCase"
      label="Use case of the load rule"
      description="what hoists are compared with"
      choices={[['', 'by the persons below'], ...[...kept, ...names].map((each) => [each, each] as const)]}
    />
  );
}

function Removal({ onFile: { version, tour }, show }: { onFile: TourOnFile; show: Show }) {
  const client = useQueryClient();
  const navigate = useNavigate();
  const remove = useMutation({
    mutationFn: () => request(removeShow, { tourId: tour.id, showId: show.id, expectedVersion: version }),
    onSuccess: async () => {
      await navigate(`/tours/${tour.id}`);
      await client.invalidateQueries();
    },
  });
  if (tour.shows.length === 1)
    return (
      <p>
        This is the only show of its tour. <Link to={`/tours/${tour.id}/change`}>Remove the tour</Link>, or add another show first.
      </p>
    );
  return <RemovePart what="show" tourId={tour.id} showId={show.id} remove={remove} />;
}
