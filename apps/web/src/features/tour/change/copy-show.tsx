import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from 'react-router';
import { z } from 'zod';
import { type Show, type Tour, followDesign } from '#tour-file';
import { type AnswerOf, request } from '../../../platform/request.js';
import { Choice, Field, Form, useTypedForm } from '../../../ui/form.js';
import { byDay, copiedShow } from '../edit/new-tour.js';
import { tourQuery, toursQuery } from '../edit/operations.js';
import { saveOver } from '../edit/save-over.js';
import { ShowFields } from '../edit/show-fields.js';
import { houseTours } from '../edit/use-tour-edits.js';
import { fieldOfNewShow, typedShow } from '../edit/typed-show.js';

type TourOnFile = AnswerOf<typeof tourQuery>['tour'];

const typedCopy = typedShow.extend({ into: z.string() });

/** Another show with the same hangs, in this tour or another, whose trucks and freight then come along. */
export function CopyShow({ onFile, show }: { onFile: TourOnFile; show: Show }) {
  const { tour } = onFile;
  const tours = useQuery({ queryKey: ['tours', 'to copy into'], queryFn: () => request(toursQuery, { after: null }) });
  const others = (tours.data?.tours.edges ?? []).map((edge) => edge.node).filter((each) => each.id !== tour.id);
  const form = useTypedForm(typedCopy, { into: tour.id, show: '', venue: '', timeZone: show.timeZone, from: '', to: '' });
  const client = useQueryClient();
  const navigate = useNavigate();
  const save = useMutation({
    mutationFn: async ({ into, ...typed }: z.output<typeof typedCopy>) => {
      const target = into === tour.id ? onFile : (await request(tourQuery, { id: into })).tour;
      const taken = [...target.tour.shows, ...target.removedShows.map((each) => ({ id: each.showId }))].map((each) => each.id);
      const same = copiedShow(show, typed, taken);
      // A design is of its tour: elsewhere the hangs alone come along.
      const copy = into === tour.id ? same : followDesign(same, undefined);
      const next = { ...withKit(target.tour, tour), shows: byDay([...target.tour.shows, copy]) };
      await saveOver(houseTours, target, next);
      return `/tours/${into}/shows/${copy.id}`;
    },
    onSuccess: async (path) => {
      await client.invalidateQueries();
      await navigate(path);
    },
  });
  return (
    <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error} fieldOf={fieldOfNewShow}>
      <p>
        {show.hangs.length} {show.hangs.length === 1 ? 'hang comes' : 'hangs come'} along with load rule {show.loadRule} and what was said
        of persons below. In another tour its {tour.trucks.length} trucks and {tour.freight.length} cases of freight are added to the trucks
        and freight there. A serial that is wanted at one place of a hang comes along too.
      </p>
      <div className="fields">
        <Field name="show" label="Name of the copy" />
        <ShowFields />
        <Choice
          name="into"
          label="Into the tour"
          choices={[[tour.id, tour.name], ...others.map((each) => [each.id, each.name] as const)]}
        />
      </div>
      <button type="submit" disabled={save.isPending}>
        Copy the show
      </button>
    </Form>
  );
}

/** A tour with the trucks and cases of another added to its own. */
function withKit(tour: Tour, from: Tour): Tour {
  const cases = new Set(tour.freight.map((each) => each.case));
  return {
    ...tour,
    trucks: [...new Set([...tour.trucks, ...from.trucks])],
    freight: [...tour.freight, ...from.freight.filter((each) => !cases.has(each.case))],
  };
}
