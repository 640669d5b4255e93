import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from 'react-router';
import { z } from 'zod';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { Note } from '../../ui/notes.js';
import { filled } from '../../ui/typed.js';

const swapMutation = graphql(`
  mutation SwapBox($planId: ID!, $serial: String!, $reason: String!) {
    swapBox(planId: $planId, serial: $serial, reason: $reason) { draftId marked difference { sentences } }
  }
`);

interface SwapProps {
  readonly planId: string;
  readonly base: string;
  readonly serials: readonly string[];
  readonly onDraft: (wants: boolean) => void;
}

const nothing = { serial: '', reason: '' };
const typedFailure = z.object({ serial: filled('a serial of this show'), reason: filled('what is wrong with it') });

/** A box fails: it is quarantined, and a draft is made that keeps every other box in its place. */
export function SwapBox({ planId, base, serials, onDraft }: SwapProps) {
  const form = useTypedForm(typedFailure, nothing);
  const client = useQueryClient();
  const swap = useMutation({
    mutationFn: (failure: z.output<typeof typedFailure>) => request(swapMutation, { planId, ...failure }),
    onSuccess: async () => {
      form.reset(nothing);
      await client.invalidateQueries();
      onDraft(true);
    },
  });
  const answer = swap.data?.swapBox;
  return (
    <details open={answer !== undefined}>
      <summary>A box has failed</summary>
      <Form form={form} className="floor" onSubmit={(failure) => swap.mutate(failure)} error={swap.error}>
        <div className="fields">
          <Field name="serial" label="Its serial" list="boxes-of-this-show" />
          <Field name="reason" label="What is wrong with it" />
        </div>
        <datalist id="boxes-of-this-show">
          {serials.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
        <button type="submit" disabled={swap.isPending}>
          Quarantine it and find another
        </button>
      </Form>
      {answer && (
        <div role="status">
          <ul>
            {answer.difference.sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <p>
            <Link to={`${base}/moves?plan=${answer.draftId}`}>Show the moves that it takes</Link>
          </p>
          {answer.marked.length > 0 && <Note weight="look">Also counted on it, plan again: {answer.marked.join('; ')}.</Note>}
        </div>
      )}
    </details>
  );
}
