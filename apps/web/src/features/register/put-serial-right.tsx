import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from 'react-router';
import { z } from 'zod';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { filled } from '../../ui/typed.js';

const correctMutation = graphql(
  `mutation CorrectSerial($itemId: ID!, $serial: String!, $reason: String!) { correctSerial(itemId: $itemId, serial: $serial, reason: $reason) { summary { id } } }`,
);

const corrected = z.object({ serial: filled('the serial as it stands on the thing'), reason: filled('how it came to be wrong') });

/** A serial that was typed wrong, put right. */
export function PutSerialRight({ id }: { id: string }) {
  const form = useTypedForm(corrected, { serial: '', reason: '' });
  const client = useQueryClient();
  const navigate = useNavigate();
  const save = useMutation({
    mutationFn: (typed: z.output<typeof corrected>) => request(correctMutation, { itemId: id, ...typed }),
    onSuccess: async ({ correctSerial }) => {
      form.reset();
      await client.invalidateQueries();
      await navigate(`/register/${encodeURIComponent(correctSerial.summary.id)}`);
    },
  });
  return (
    <details>
      <summary>The serial was typed wrong</summary>
      <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error}>
        <div className="fields">
          <Field name="serial" label="Right serial" description="as it stands on the thing" />
          <Field name="reason" label="How it came to be wrong" />
        </div>
        <p className="quiet">
          What was examined, planned or counted keeps its records under {id}. The safety officer puts the right serial beside it, with the
          same records, and {id} is retired.
        </p>
        <button type="submit" disabled={save.isPending}>
          Put the serial right
        </button>
      </Form>
    </details>
  );
}
