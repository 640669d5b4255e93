import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from 'react-router';
import { z } from 'zod';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { request, sendFile } from '../../platform/request.js';
import { today } from '../../platform/today.js';
import { Faults } from '../../ui/faults.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { filled } from '../../ui/typed.js';
import { type LentKitView, clearPaperMutation, giveBackMutation, readLentKit } from './operations.js';
import { TakeIn } from './take-in.js';

/** What lenders, contractors and venues have here: taken in, its paper seen or cleared, given back. */
export function KitOfOthers({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['kit of others'], queryFn: readLentKit });
  return (
    <Page
      title="Kit of others"
      lede="What a lender, a contractor or the venue has here. Nothing of it is used before its paper was seen, or the safety officer cleared that it is missing; after its return never."
    >
      <Part number={1} title="Take in">
        <TakeIn />
      </Part>
      <Part number={2} title="Here now">
        <Loaded query={query}>{(kit) => <Here kit={kit.filter((each) => !each.lent.givenBack)} me={me} />}</Loaded>
        <p className="caution">A paper on file does not replace the examination, nor the look at the kit before it is used.</p>
      </Part>
      <Part number={3} title="Given back">
        <Loaded query={query}>{(kit) => <Gone kit={kit.filter((each) => each.lent.givenBack)} />}</Loaded>
      </Part>
    </Page>
  );
}

function Here({ kit, me }: { kit: readonly LentKitView[]; me: Person }) {
  if (kit.length === 0) return <p className="quiet">None is here.</p>;
  return (
    <>
      {kit.map((each) => (
        <One key={each.itemId} kit={each} me={me} />
      ))}
    </>
  );
}

function One({ kit, me }: { kit: LentKitView; me: Person }) {
  const { itemId, kind, model, count, owner, depot, lent } = kit;
  return (
    <div role="group" aria-label={itemId}>
      <h3>
        <Link to={`/register/${encodeURIComponent(itemId)}`}>{itemId}</Link>, kit of {owner} ({lent.by})
      </h3>
      <p>
        {kind}, {model}
        {count === null ? '' : `, ${count} of it`}; at {depot}. Delivered on {lent.delivered.on}: {lent.delivered.condition}.{' '}
        {lent.ratedLoad ? `Plate: ${lent.ratedLoad}.` : 'Rated load of its plate not noted.'}
      </p>
      <PaperWords lent={lent} />
      <p className="quiet">
        Its dates are judged beside that: where a rule asks for an examination, enter the one of its paper at{' '}
        <Link to={`/register/${encodeURIComponent(itemId)}`}>{itemId}</Link> before it is planned.
      </p>
      {!lent.paper && <PaperForm itemId={itemId} />}
      {!lent.paper && !lent.cleared && actsAsOfficer(me) && <ClearForm itemId={itemId} />}
      <GiveBackForm itemId={itemId} />
      <p>
        <Link to={`/print/kit-of-others/${encodeURIComponent(itemId)}`} target="_blank">
          Print its note
        </Link>
      </p>
    </div>
  );
}

function PaperWords({ lent: { paper, cleared } }: Pick<LentKitView, 'lent'>) {
  if (paper)
    return (
      <p>
        ○ Paper: <a href={`/api/reports/${paper.file}`}>{paper.name}</a>, seen by {paper.seenBy} on {paper.seenOn}.
      </p>
    );
  if (cleared)
    return (
      <p>
        ○ Paper missing; cleared by {cleared.by} on {cleared.on}: {cleared.reason}.
      </p>
    );
  return (
    <p>
      ■ <b>stop</b> Its paper was not seen: it must not be used.
    </p>
  );
}

/** Read again after every act. */
function useAct<T>(act: (given: T) => Promise<unknown>) {
  const client = useQueryClient();
  return useMutation({ mutationFn: act, onSuccess: () => client.invalidateQueries({ queryKey: ['kit of others'] }) });
}

function PaperForm({ itemId }: { itemId: string }) {
  const send = useAct((file: File) =>
    sendFile(`/api/papers/${encodeURIComponent(itemId)}?name=${encodeURIComponent(file.name)}`, file, file.type),
  );
  return (
    <>
      <label>
        Photograph its paper, or choose a file (PDF, JPEG, PNG)
        <input
          type="file"
          accept="image/jpeg,image/png,application/pdf"
          disabled={send.isPending}
          onChange={(event) => event.target.files?.[0] && send.mutate(event.target.files[0])}
        />
      </label>
      <small className="quiet">
        Read it first: its serial and rated load are those of the plate. It is kept with your name as the one who saw it.
      </small>
      <Faults of={send.error} />
    </>
  );
}

const typedClear = z.object({ reason: filled('why it may be used without') });

function ClearForm({ itemId }: { itemId: string }) {
  const form = useTypedForm(typedClear, { reason: '' });
  const clear = useAct(({ reason }: z.output<typeof typedClear>) => request(clearPaperMutation, { itemId, reason }));
  return (
    <details>
      <summary>Clear it without its paper</summary>
      <Form form={form} onSubmit={(typed) => clear.mutate(typed)} error={clear.error}>
        <div className="fields">
          <Field
            name="reason"
            label="Why it may be used"
            description="what you saw of it here, such as its plate; this answers for the missing paper, not for its examination"
          />
        </div>
        <button type="submit" disabled={clear.isPending}>
          Clear it
        </button>
      </Form>
    </details>
  );
}

const typedReturn = z.object({ on: filled('a day'), condition: filled('in which state it goes back') });

function GiveBackForm({ itemId }: { itemId: string }) {
  const form = useTypedForm(typedReturn, { on: today(), condition: '' });
  const give = useAct((typed: z.output<typeof typedReturn>) => request(giveBackMutation, { itemId, ...typed }));
  return (
    <details>
      <summary>Give it back</summary>
      <Form form={form} onSubmit={(typed) => give.mutate(typed)} error={give.error}>
        <div className="fields">
          <Field name="on" label="Given back on" type="date" />
          <Field name="condition" label="Condition" description="as it goes" />
        </div>
        <button type="submit" disabled={give.isPending}>
          Give it back
        </button>
      </Form>
    </details>
  );
}

const Gone = ({ kit }: { kit: readonly LentKitView[] }) =>
  kit.length === 0 ? (
    <p className="quiet">None.</p>
  ) : (
    <ul>
      {kit.map(({ itemId, model, owner, lent }) => (
        <li key={itemId}>
          <Link to={`/register/${encodeURIComponent(itemId)}`}>{itemId}</Link>, {model}, kit of {owner}: given back on {lent.givenBack?.on},{' '}
          {lent.givenBack?.condition}.{' '}
          <Link to={`/print/kit-of-others/${encodeURIComponent(itemId)}`} target="_blank">
            Print its notes
          </Link>
        </li>
      ))}
    </ul>
  );
