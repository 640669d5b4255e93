import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { placeName } from '#trade';
import { request } from '../../../platform/request.js';
import { Faults } from '../../../ui/faults.js';
import { answerPlace } from './operations.js';

interface Props {
  readonly tourId: string;
  readonly of: { readonly place: string; readonly judgedBy?: string | null };
  readonly ruled: readonly string[];
  /** Where the depot is, if that place has rules. */
  readonly home: string | null;
}

/** Whose rules are taken at a place that has none on file, with the reason. */
export function AnswerForm({ tourId, of: { place, judgedBy }, ruled, home }: Props) {
  const [rulesOf, setRulesOf] = useState(judgedBy ?? home ?? '');
  const [reason, setReason] = useState('');
  const client = useQueryClient();
  const answer = useMutation({
    mutationFn: (taken: string | null) => request(answerPlace, { tourId, place, rulesOf: taken, reason }),
    onSuccess: async () => {
      setReason('');
      await client.invalidateQueries();
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    answer.mutate(rulesOf);
  };
  return (
    <form onSubmit={submit}>
      <div className="fields">
        <label>
          Whose rules are taken in {placeName(place)}
          <select value={rulesOf} onChange={(event) => setRulesOf(event.target.value)}>
            <option value="">choose one</option>
            {ruled.map((code) => (
              <option key={code} value={code}>
                {placeName(code)}
                {code === home ? ': home rules' : ''}
              </option>
            ))}
          </select>
        </label>
        <label>
          Why
          <input value={reason} maxLength={300} onChange={(event) => setReason(event.target.value)} />
        </label>
      </div>
      <Faults of={answer.error} />
      <button type="submit" disabled={answer.isPending || rulesOf === '' || reason.trim() === ''}>
        Judge it by these rules
      </button>{' '}
      {judgedBy && (
        <button type="button" className="plain" disabled={answer.isPending || reason.trim() === ''} onClick={() => answer.mutate(null)}>
          Take the answer back
        </button>
      )}
    </form>
  );
}
