import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import type { Sheet } from './use-count-sheet.js';
import { correctCount, takeCountBack } from './operations.js';

type CountRecord = Sheet['records'][number];

/** Every record, the newest first; those that another took the place of stay readable. */
export function CountRecords({ records, mayCorrect }: { records: readonly CountRecord[]; mayCorrect: boolean }) {
  if (records.length === 0) return <p>Nothing has been counted yet.</p>;
  return (
    <ul className="plain">
      {records.map((each) => (
        <li key={each.id} className="record">
          <p>
            <b>{each.key}</b>, {each.shows.join(', ')}:{' '}
            {each.uses === 0 ? 'taken back' : `${each.returned} of ${each.sent} back, ${each.damaged} unfit, ${each.losses} gone or unfit`}
            {each.uses === 0 ? '' : ` in ${each.uses} uses`}
            {each.inForce ? '' : ' ◐ no longer in force'}
            <br />
            <span className="quiet">
              No. {each.id}, {each.countedBy}, {momentOf(each.countedAt)}
              {each.corrects ? `, in the place of no. ${each.corrects}: ${each.reason}` : ''}
            </span>
          </p>
          {mayCorrect && each.inForce && each.uses > 0 && <Correct record={each} />}
        </li>
      ))}
    </ul>
  );
}

function Correct({ record }: { record: CountRecord }) {
  const [form, setForm] = useState({
    sent: String(record.sent),
    returned: String(record.returned),
    damaged: String(record.damaged),
    reason: '',
  });
  const client = useQueryClient();
  const onSuccess = () => client.invalidateQueries();
  const correct = useMutation({
    mutationFn: () =>
      request(correctCount, {
        id: record.id,
        sent: Number(form.sent),
        returned: Number(form.returned),
        damaged: Number(form.damaged),
        reason: form.reason,
      }),
    onSuccess,
  });
  const back = useMutation({ mutationFn: () => request(takeCountBack, { id: record.id, reason: form.reason }), onSuccess });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    correct.mutate();
  };
  const field = (part: keyof typeof form, label: string) => (
    <label>
      {label}
      <input
        inputMode={part === 'reason' ? 'text' : 'numeric'}
        required
        value={form[part]}
        onChange={(event) => setForm({ ...form, [part]: event.target.value })}
      />
    </label>
  );
  return (
    <details>
      <summary>This count was wrong</summary>
      <form onSubmit={submit} className="floor counts">
        <div className="trio">
          {field('sent', 'Sent')}
          {field('returned', 'Back')}
          {field('damaged', 'Of those unfit')}
        </div>
        {field('reason', 'What was wrong')}
        <Faults of={correct.error ?? back.error} />
        <div className="row actions">
          <button type="submit" disabled={correct.isPending || form.reason.trim() === ''}>
            Record the right count
          </button>
          <button type="button" className="plain" disabled={back.isPending || form.reason.trim() === ''} onClick={() => back.mutate()}>
            Take the count back
          </button>
        </div>
      </form>
    </details>
  );
}
