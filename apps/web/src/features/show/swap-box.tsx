import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';

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

/** A box fails: it is quarantined, and a draft is made that keeps every other box in its place. */
export function SwapBox({ planId, base, serials, onDraft }: SwapProps) {
  const [serial, setSerial] = useState('');
  const [reason, setReason] = useState('');
  const client = useQueryClient();
  const swap = useMutation({
    mutationFn: () => request(swapMutation, { planId, serial: serial.trim(), reason }),
    onSuccess: async () => {
      setSerial('');
      setReason('');
      await client.invalidateQueries();
      onDraft(true);
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    swap.mutate();
  };
  const answer = swap.data?.swapBox;
  return (
    <details open={answer !== undefined}>
      <summary>A box has failed</summary>
      <form onSubmit={submit} className="floor">
        <div className="fields">
          <label>
            Its serial
            <input
              list="boxes-of-this-show"
              value={serial}
              onChange={(event) => setSerial(event.target.value)}
              autoCapitalize="characters"
            />
            <datalist id="boxes-of-this-show">
              {serials.map((each) => (
                <option key={each} value={each} />
              ))}
            </datalist>
          </label>
          <label>
            What is wrong with it
            <input value={reason} onChange={(event) => setReason(event.target.value)} />
          </label>
        </div>
        <Faults of={swap.error} />
        <button type="submit" disabled={swap.isPending}>
          Quarantine it and find another
        </button>
      </form>
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
