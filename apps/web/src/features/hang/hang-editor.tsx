import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useWatch } from 'react-hook-form';
import { Link, useNavigate, useParams } from 'react-router';
import { z } from 'zod';
import { type Hang, type Show, type Tour, hang } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Form, namePath, useFormOf } from '../../ui/form.js';
import { Loaded, Page } from '../../ui/page.js';
import { saveTour, tourQuery } from '../tour/operations.js';
import { freeId, newHang, withCopy } from './form/change-hang.js';
import { HangForm } from './form/hang-form.js';
import { type Kit, readKit } from './form/kit.js';
import { useKeptEdits } from './use-kept-edits.js';

/** The hangs of a show, entered by form or pasted, drawn at once. */
export function HangEditor({ me }: { me: Person }) {
  const { tourId = '', showId = '' } = useParams();
  const tour = useQuery({ queryKey: ['tour', tourId], queryFn: () => request(tourQuery, { id: tourId }) });
  const kit = useQuery({ queryKey: ['hang-models'], queryFn: readKit });
  if (me.role !== 'system') return <Page title="Hangs">The system tech changes the hangs.</Page>;
  return (
    <Loaded query={tour}>
      {({ tour: { version, tour: data } }) => {
        const show = data.shows.find((each) => each.id === showId);
        if (!show) return <Page title="Hangs">There is no such show.</Page>;
        return <Loaded query={kit}>{(models) => <Editor tour={data} version={version} show={show} kit={models} />}</Loaded>;
      }}
    </Loaded>
  );
}

/** Read by the schema of the tour file; what it gives is the form's own value, so that fields left out stay out. */
const typedHangs = z.object({ hangs: z.array(hang) }) as unknown as z.ZodType<{ hangs: Hang[] }>;

function Editor({ tour, version, show, kit }: { tour: Tour; version: number; show: Show; kit: Kit }) {
  const form = useFormOf(typedHangs, { hangs: show.hangs });
  const hangs = useWatch({ control: form.control, name: 'hangs' });
  const client = useQueryClient();
  const navigate = useNavigate();
  const base = `/tours/${tour.id}/shows/${show.id}`;
  const kept = useKeptEdits(base, form);
  const [removed, setRemoved] = useState<{ readonly hang: Hang; readonly at: number } | null>(null);
  const save = useMutation({
    mutationFn: (typed: { hangs: Hang[] }) =>
      request(saveTour, {
        tour: { ...tour, shows: tour.shows.map((each) => (each.id === show.id ? { ...each, hangs: typed.hangs } : each)) },
        expectedVersion: version,
      }),
    onSuccess: async () => {
      kept.end();
      await client.invalidateQueries();
      await navigate(base);
    },
  });
  const setHangs = (next: Hang[]) => form.setValue('hangs', next, { shouldDirty: true });
  const index = tour.shows.indexOf(show);
  return (
    <Page title={`Hangs of ${show.name}`} lede={<Link to={base}>Back to the show; edits that are not saved are kept here</Link>}>
      <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error} fieldOf={(path) => nameIn(path, index)}>
        <div className="row actions">
          <button type="submit" disabled={save.isPending}>
            Save the hangs
          </button>
          {!form.formState.isValid && form.formState.isSubmitted && <span className="said">■ Some fields below are not right yet.</span>}
        </div>
        {kept.isBack && <BackAgain onForget={() => kept.forget(show.hangs)} />}
        {removed && (
          <TakenOut
            hang={removed.hang}
            onUndo={() => {
              setHangs([...hangs.slice(0, removed.at), removed.hang, ...hangs.slice(removed.at)]);
              setRemoved(null);
            }}
          />
        )}
        {hangs.map((_, at) => (
          <HangForm
            key={at}
            index={at}
            kit={kit}
            onRemove={() => {
              setRemoved(hangs[at] ? { hang: hangs[at], at } : null);
              setHangs(hangs.filter((_each, other) => other !== at));
            }}
            onCopy={() => setHangs(withCopy(hangs, at))}
          />
        ))}
        <button type="button" className="plain" onClick={() => setHangs([...hangs, newHang(freeId(hangs), kit)])}>
          Add a hang
        </button>
      </Form>
    </Page>
  );
}

const BackAgain = ({ onForget }: { onForget: () => void }) => (
  <p role="status">
    Your edits from before are here again, not saved yet.{' '}
    <button type="button" className="plain small" onClick={onForget}>
      Take what is on file
    </button>
  </p>
);

const TakenOut = ({ hang, onUndo }: { hang: Hang; onUndo: () => void }) => (
  <p role="status">
    {hang.name ?? hang.id} with its {hang.boxes.length} boxes is taken out; it is gone once the hangs are saved.{' '}
    <button type="button" className="plain small" onClick={onUndo}>
      Undo
    </button>
  </p>
);

/** A fault of the saved tour by the name of its field here. */
function nameIn(path: string, show: number): string | undefined {
  const start = `shows[${show}].`;
  const at = path.indexOf(start);
  return at < 0 ? undefined : namePath(path.slice(at + start.length));
}
