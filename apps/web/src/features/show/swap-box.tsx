import { useQueryClient } from '@tanstack/react-query';
import { Link } from 'react-router';
import { z } from 'zod';
import { graphql } from '#contracts';
import { usePlanning } from '../../platform/planning.js';
import { type AnswerOf, request } from '../../platform/request.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { Note } from '../../ui/notes.js';
import { filled } from '../../ui/typed.js';
import { UnderWay } from '../../ui/under-way.js';
import { useCarts } from '../plan/use-plan-parts.js';

const swapMutation = graphql(`
  mutation SwapBox($planId: ID!, $serial: String!, $reason: String!) {
    swapBox(planId: $planId, serial: $serial, reason: $reason, waitMs: 800) {
      __typename
      ... on SwapResult { draftId marked difference { sentences } }
      ... on PlanningRefusal { code sentence reasons }
      ... on JobUnderWay { job { id state progress } }
    }
  }
`);

interface SwapProps {
  readonly planId: string;
  readonly base: string;
  readonly onDraft: (wants: boolean) => void;
}

const nothing = { serial: '', reason: '' };
const typedFailure = z.object({ serial: filled('a serial of this show'), reason: filled('what is wrong with it') });

/** A box fails: it is quarantined, and a draft is made that keeps every other box in its place. */
export function SwapBox({ planId, base, onDraft }: SwapProps) {
  const loads = useCarts(planId).data?.loads ?? [];
  const serials = loads.flatMap((load) => load.boxes.flatMap((box) => box.serial ?? []));
  const form = useTypedForm(typedFailure, nothing);
  const client = useQueryClient();
  const swap = usePlanning<AnswerOf<typeof swapMutation>['swapBox']>({
    onAnswer: async (said) => {
      if (said.__typename !== 'SwapResult') return client.invalidateQueries();
      form.reset(nothing);
      await client.invalidateQueries();
      onDraft(true);
    },
  });
  const quarantine = (failure: z.output<typeof typedFailure>) =>
    swap.mutate(async (requestId) => (await request(swapMutation, { planId, ...failure }, { requestId })).swapBox);
  const answer = swap.data?.__typename === 'SwapResult' ? swap.data : undefined;
  const refusal = swap.data?.__typename === 'PlanningRefusal' ? swap.data : undefined;
  return (
    <details open={answer !== undefined}>
      <summary>A box has failed</summary>
      <Form form={form} className="floor" onSubmit={quarantine} error={swap.error}>
        <div className="fields">
          <Field name="serial" label="Its serial" list="boxes-of-this-show" />
          <Field name="reason" label="What is wrong with it" />
        </div>
        <datalist id="boxes-of-this-show">
          {serials.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
        {swap.isPending && <UnderWay job={swap.job} onCancel={swap.cancel} of="Looking for another box" />}
        {refusal && <Note weight="stop">{`The box is quarantined, but no draft was made. ${refusal.sentence}`}</Note>}
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
