import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { itemKinds, lenderKinds } from '#tour-file';
import { request } from '../../platform/request.js';
import { today } from '../../platform/today.js';
import { SaidWaits } from '../edition/waits.js';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';
import { filled } from '../../ui/typed.js';
import { depotsAndModelsQuery, takeInMutation } from './operations.js';

const number = z
  .string()
  .trim()
  .refine((text) => text === '' || (Number.isFinite(Number(text)) && Number(text) > 0), 'a number above 0, or nothing');

const typedKit = z.object({
  by: filled('what the owner is'),
  owner: filled('whose it is, by name'),
  serial: z.string().trim(),
  kind: filled('a kind'),
  model: filled('a model on file'),
  count: number,
  ratedLoad: z.string().trim(),
  massKg: number,
  depot: filled('where it is, by its name in the register'),
  on: filled('a day'),
  condition: filled('in which state it came'),
});

const empty = { serial: '', owner: '', model: '', count: '', ratedLoad: '', massKg: '', depot: '', condition: '' };
const kindOfModels = (kind: string): string => (kind === 'box' ? 'boxes' : `${kind}s`);

/** The delivery note: what comes, whose it is, in which state. */
export function TakeIn() {
  const nothing = { ...empty, by: 'lender', kind: 'hoist', on: today() };
  const form = useTypedForm(typedKit, nothing);
  const client = useQueryClient();
  const models = useQuery({ queryKey: ['models', 'names'], queryFn: () => request(depotsAndModelsQuery) });
  const kind = form.watch('kind');
  const fitting = (models.data?.catalogueModels ?? []).filter((each) => each.kind === kindOfModels(kind));
  const take = useMutation({
    mutationFn: ({ count, massKg, ...typed }: z.output<typeof typedKit>) =>
      request(takeInMutation, {
        kit: { ...typed, count: count === '' ? null : Number(count), massKg: massKg === '' ? null : Number(massKg) },
      }),
    onSuccess: async () => {
      form.reset(nothing);
      await client.invalidateQueries({ queryKey: ['kit of others'] });
    },
  });
  const taken = take.data?.takeInLentKit;
  return (
    <details>
      <summary>Write its delivery note</summary>
      <Form form={form} onSubmit={(typed) => take.mutate(typed)} error={take.error}>
        <div className="fields">
          <Choice name="by" label="Its owner is a" choices={lenderKinds.map((each) => [each, each])} />
          <Field name="owner" label="Name of the owner" />
          <Field name="serial" label="Serial" description="empty where it has none" />
          <Choice name="kind" label="Kind" choices={itemKinds.map((each) => [each, each])} />
          <Choice name="model" label="Model" choices={[['', 'choose one'], ...fitting.map((each) => [each.model, each.model] as const)]} />
          <Field name="count" label="Pieces" description="of a batch; empty for one thing" />
          <Field name="ratedLoad" label="Rated load on its plate" description="as it stands there, such as 2 t" />
          <Field name="massKg" label="Mass on its plate, kg" />
          <Field name="depot" label="Delivered to" description="a depot by its name in the register" />
          <Field name="on" label="Delivered on" type="date" />
          <Field name="condition" label="Condition" description="as it came" />
        </div>
        <button type="submit" disabled={take.isPending}>
          Take it in
        </button>
      </Form>
      {taken && (
        <div role="status">
          <p>{taken.itemId} is on file, and barred until its paper was seen: photograph it below.</p>
          <SaidWaits sentences={taken.waits} count={taken.waits.length} />
        </div>
      )}
    </details>
  );
}
