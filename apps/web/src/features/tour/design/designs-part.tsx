import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { z } from 'zod';
import { type Design, type Tour, differences, followDesign, freeId, keepAsDesign } from '#tour-file';
import { Faults } from '../../../ui/faults.js';
import { Choice, Field, Form, useTypedForm } from '../../../ui/form.js';
import { filled } from '../../../ui/typed.js';
import { type ReadTour, saveOver } from '../edit/save-over.js';
import { houseTours } from '../edit/use-tour-edits.js';
import { scrolls } from '../../../ui/scrolls.js';

interface Of {
  readonly tour: Tour;
  readonly version: number;
}

/** Saves the tour otherwise; what was done can be taken back, beside what others did since. */
function useUndoable({ tour, version }: Of) {
  const client = useQueryClient();
  const [done, setDone] = useState<{ readonly said: string; readonly before: Tour; readonly after: ReadTour } | null>(null);
  const save = useMutation({
    mutationFn: async ({ next, said }: { next: Tour; said: string | null }) => {
      // Taken back is from what was saved: what others did since holds.
      const saved = await saveOver(houseTours, done && said === null ? done.after : { tour, version }, next);
      setDone(said === null ? null : { said, before: tour, after: saved });
      await client.invalidateQueries();
    },
  });
  return { save, done, undo: () => done && save.mutate({ next: done.before, said: null }) };
}

/** Designs of a tour: what each hangs, where it is flown, what differs there. */
export function DesignsPart({ tour, version, mayChange }: Of & { mayChange: boolean }) {
  const undoable = useUndoable({ tour, version });
  const { save, done, undo } = undoable;
  const designs = tour.designs ?? [];
  const remove = (design: Design) =>
    save.mutate({
      next: { ...tour, designs: designs.filter((each) => each !== design) },
      said: `The design ${design.name} is taken out.`,
    });
  return (
    <>
      <p>
        {designs.length === 0
          ? 'No design is kept yet. A design is hung once and flown at many shows; what differs at one of them stays with that show.'
          : 'Hung once, flown at every show that follows it.'}
      </p>
      {designs.length > 0 && (
        <div {...scrolls}>
          <table>
            <thead>
              <tr>
                <th>Design</th>
                <th className="num">Hangs</th>
                <th className="num">Boxes</th>
                <th>Flown at</th>
              </tr>
            </thead>
            <tbody>
              {designs.map((each) => (
                <DesignRow key={each.id} tour={tour} design={each} mayChange={mayChange} onRemove={() => remove(each)} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {done && (
        <p role="status">
          {done.said}{' '}
          <button type="button" className="plain small" disabled={save.isPending} onClick={undo}>
            Undo
          </button>
        </p>
      )}
      <Faults of={save.error} />
      {mayChange && <KeepDesign tour={tour} save={save.mutate} />}
      {mayChange && designs.length > 0 && <GiveDesign tour={tour} save={save.mutate} />}
    </>
  );
}

const boxesOf = ({ hangs }: Design): number =>
  hangs.reduce((sum, { mirrorOf, boxes }) => sum + (hangs.find((each) => each.id === mirrorOf)?.boxes ?? boxes).length, 0);

function DesignRow({ tour, design, mayChange, onRemove }: { tour: Tour; design: Design; mayChange: boolean; onRemove: () => void }) {
  const using = tour.shows.filter((each) => each.design === design.id);
  return (
    <tr>
      <td>
        {mayChange ? <Link to={`/tours/${tour.id}/designs/${design.id}`}>{design.name}</Link> : design.name}
        {design.hangs.length === 0 && <div>■ nothing hangs in it yet</div>}
      </td>
      <td className="num">{design.hangs.length}</td>
      <td className="num">{boxesOf(design)}</td>
      <td>
        {using.map((show) => {
          const count = differences(show, design).length;
          return (
            <div key={show.id}>
              <Link to={`/tours/${tour.id}/shows/${show.id}`}>{show.name}</Link>
              {count > 0 && `: ◐ ${count} ${count === 1 ? 'hang differs' : 'hangs differ'}`}
            </div>
          );
        })}
        {using.length === 0 && (
          <>
            no show yet{' '}
            {mayChange && (
              <button type="button" className="plain small" aria-label={`Take out the design ${design.name}`} onClick={onRemove}>
                Take it out
              </button>
            )}
          </>
        )}
      </td>
    </tr>
  );
}

type Save = (change: { next: Tour; said: string }) => void;

const typedKeep = z.object({ show: filled('a show'), name: filled('a name') });

function KeepDesign({ tour, save }: { tour: Tour; save: Save }) {
  const form = useTypedForm(typedKeep, { show: '', name: '' });
  const keep = ({ show, name }: z.output<typeof typedKeep>) => {
    const id = freeId(
      name,
      (tour.designs ?? []).map((each) => each.id),
      'design',
    );
    save({ next: keepAsDesign(tour, show, { id, name }), said: `${name} is kept as a design.` });
    form.reset({ show: '', name: '' });
  };
  return (
    <details>
      <summary>Keep the hangs of a show as a design</summary>
      <Form form={form} onSubmit={keep}>
        <div className="fields">
          <Choice
            name="show"
            label="Hangs of"
            choices={[['', 'choose a show'], ...tour.shows.map((each) => [each.id, each.name] as const)]}
          />
          <Field name="name" label="Name of the design" />
        </div>
        <button type="submit">Keep the design</button>
      </Form>
    </details>
  );
}

const typedGive = z.object({ at: filled('a show'), design: z.string() });

function GiveDesign({ tour, save }: { tour: Tour; save: Save }) {
  const form = useTypedForm(typedGive, { at: '', design: '' });
  const give = ({ at, design: id }: z.output<typeof typedGive>) => {
    const design = tour.designs?.find((each) => each.id === id);
    const shows = tour.shows.map((each) => (each.id === at ? followDesign(each, design) : each));
    const name = tour.shows.find((each) => each.id === at)?.name ?? at;
    const said = design ? `${name} hangs what ${design.name} hangs.` : `${name} follows no design; its hangs are as they were.`;
    save({ next: { ...tour, shows }, said });
    form.reset({ at: '', design: '' });
  };
  return (
    <details>
      <summary>Fly a design at a show</summary>
      <Form form={form} onSubmit={give}>
        <p className="quiet">All hangs of the show are then those of the design.</p>
        <div className="fields">
          <Choice name="at" label="Show" choices={[['', 'choose a show'], ...tour.shows.map((each) => [each.id, each.name] as const)]} />
          <Choice
            name="design"
            label="Design"
            choices={[['', 'none: its hangs are its own'], ...(tour.designs ?? []).map((each) => [each.id, each.name] as const)]}
          />
        </div>
        <button type="submit">Fly it</button>
      </Form>
    </details>
  );
}
