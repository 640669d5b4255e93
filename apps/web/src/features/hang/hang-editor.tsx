import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { useWatch } from 'react-hook-form';
import { Link, useNavigate, useParams } from 'react-router';
import { z } from 'zod';
import { type Hang, type Tour, changeDesign, hang } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { today } from '../../platform/today.js';
import { Form, namePath, useFormOf } from '../../ui/form.js';
import { Loaded, Page } from '../../ui/page.js';
import { tourQuery } from '../tour/edit/operations.js';
import { useTourSave } from '../tour/edit/use-tour-save.js';
import { freeId, newHang, withCopy } from './form/change-hang.js';
import { HangForm } from './form/hang-form.js';
import { type Kit, readKit } from './form/kit.js';
import { FromDesign, WhereFlown } from './of-design.js';
import { useEditSteps } from './use-edit-steps.js';
import { useKeptEdits } from './use-kept-edits.js';

/** The hangs of a show, entered by form or pasted, drawn at once. */
export function HangEditor({ me }: { me: Person }) {
  const { tourId = '', showId = '' } = useParams();
  return (
    <OfTour me={me} tourId={tourId}>
      {(tour, version, kit) => {
        const show = tour.shows.find((each) => each.id === showId);
        if (!show) return <Page title="Hangs">There is no such show.</Page>;
        const base = `/tours/${tour.id}/shows/${show.id}`;
        const after = (of: Tour, hangs: Hang[]): Tour => ({
          ...of,
          shows: of.shows.map((each) => (each.id === show.id ? { ...each, hangs } : each)),
        });
        return (
          <Editor
            title={`Hangs of ${show.name}`}
            back={<Link to={base}>Back to the show; edits that are not saved are kept here</Link>}
            {...{ tour, version, kit, base, after }}
            hangs={show.hangs}
            at={`shows[${tour.shows.indexOf(show)}].`}
            beside={(hangs, setHangs) => <FromDesign tour={tour} show={show} hangs={hangs} onTake={setHangs} />}
          />
        );
      }}
    </OfTour>
  );
}

/** The hangs of a design, for all shows that follow it. */
export function DesignEditor({ me }: { me: Person }) {
  const { tourId = '', designId = '' } = useParams();
  return (
    <OfTour me={me} tourId={tourId}>
      {(tour, version, kit) => {
        const design = tour.designs?.find((each) => each.id === designId);
        if (!design) return <Page title="Hangs">There is no such design.</Page>;
        const after = (of: Tour, hangs: Hang[]): Tour => changeDesign(of, design.id, hangs, today()).tour;
        return (
          <Editor
            title={`Design ${design.name}`}
            back={<Link to={`/tours/${tour.id}`}>Back to the tour; edits that are not saved are kept here</Link>}
            {...{ tour, version, kit, after }}
            base={`/tours/${tour.id}`}
            draftKey={`/tours/${tour.id}/designs/${design.id}`}
            hangs={design.hangs}
            at={`designs[${tour.designs?.indexOf(design)}].`}
            beside={(hangs) => <WhereFlown tour={tour} design={design} hangs={hangs} />}
          />
        );
      }}
    </OfTour>
  );
}

function OfTour({ me, tourId, children }: { me: Person; tourId: string; children: (tour: Tour, version: number, kit: Kit) => ReactNode }) {
  const tour = useQuery({ queryKey: ['tour', tourId], queryFn: () => request(tourQuery, { id: tourId }) });
  const kit = useQuery({ queryKey: ['hang-models'], queryFn: readKit });
  if (me.role !== 'system') return <Page title="Hangs">The system tech changes the hangs.</Page>;
  return (
    <Loaded query={tour}>
      {({ tour: { version, tour: data } }) => <Loaded query={kit}>{(models) => <>{children(data, version, models)}</>}</Loaded>}
    </Loaded>
  );
}

/** Read by the schema of the tour file; what it gives is the form's own value, so that fields left out stay out. */
const typedHangs = z.object({ hangs: z.array(hang) }) as unknown as z.ZodType<{ hangs: Hang[] }>;

interface EditorProps {
  readonly title: string;
  readonly back: ReactNode;
  readonly tour: Tour;
  readonly version: number;
  readonly hangs: Hang[];
  readonly kit: Kit;
  /** Where it goes on once they are saved. */
  readonly base: string;
  /** Under which edits that are not saved are kept; `base` where nothing is said. */
  readonly draftKey?: string;
  /** Where these hangs are in the tour, as a fault of it says it. */
  readonly at: string;
  /** A tour with these hangs. */
  readonly after: (of: Tour, hangs: Hang[]) => Tour;
  readonly beside: (hangs: Hang[], setHangs: (hangs: Hang[]) => void) => ReactNode;
}

function Editor({ title, back, tour, version, hangs: onFile, kit, base, draftKey = base, at: place, after, beside }: EditorProps) {
  const form = useFormOf(typedHangs, { hangs: onFile });
  const hangs = useWatch({ control: form.control, name: 'hangs' });
  const client = useQueryClient();
  const navigate = useNavigate();
  const saveIt = useTourSave({ tour, version }, form.formState.isDirty);
  const kept = useKeptEdits(draftKey, form);
  const steps = useEditSteps(form);
  const [removed, setRemoved] = useState<{ readonly hang: Hang; readonly at: number } | null>(null);
  const save = useMutation({
    mutationFn: (typed: { hangs: Hang[] }) => saveIt((of) => after(of, typed.hangs)),
    onSuccess: async () => {
      kept.end();
      await client.invalidateQueries();
      await navigate(base);
    },
  });
  const setHangs = (next: Hang[]) => form.setValue('hangs', next, { shouldDirty: true });
  return (
    <Page title={title} lede={back}>
      <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error} fieldOf={(path) => nameIn(path, place)} keeps={false}>
        <SaveRow isSaving={save.isPending} steps={steps} isWrong={!form.formState.isValid && form.formState.isSubmitted} />
        {kept.isBack && <BackAgain onForget={() => kept.forget(onFile)} />}
        {beside(hangs, setHangs)}
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

function SaveRow({ isSaving, steps, isWrong }: { isSaving: boolean; steps: ReturnType<typeof useEditSteps>; isWrong: boolean }) {
  return (
    <div className="row actions">
      <button type="submit" disabled={isSaving}>
        Save the hangs
      </button>
      <StepButtons steps={steps} />
      {isWrong && <span className="said">■ Some fields below are not right yet.</span>}
    </div>
  );
}

const StepButtons = ({ steps: { left, back, on } }: { steps: ReturnType<typeof useEditSteps> }) => (
  <>
    <button type="button" className="plain" disabled={left.back === 0} onClick={back}>
      Take back the last change
    </button>
    <button type="button" className="plain" disabled={left.on === 0} onClick={on}>
      Make it again
    </button>
  </>
);

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
function nameIn(path: string, start: string): string | undefined {
  const at = path.indexOf(start);
  return at < 0 ? undefined : namePath(path.slice(at + start.length));
}
