import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useEffect, useState } from 'react';
import { Link } from 'react-router';
import type { PackPlan } from '#pack-plan';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';
import { recordCounts } from './operations.js';
import type { Sheet } from './use-count-sheet.js';

interface Typed {
  readonly sent: string;
  readonly returned: string;
  readonly damaged: string;
}

const nothing: Typed = { sent: '', returned: '', damaged: '' };
const gone = ({ sent, returned, damaged }: Typed): number => Number(sent) - Number(returned) + Number(damaged || 0);

/** One line a model: sent as planned unless typed otherwise; a line without "back" is not counted and stays open. */
export function CountForm({ sheet, plan }: { sheet: Sheet; plan: PackPlan | undefined }) {
  const draftKey = `counts ${sheet.tourId} ${sheet.showId}`;
  const [typed, setTyped] = useState<Readonly<Record<string, Typed>>>(
    () => JSON.parse(sessionStorage.getItem(draftKey) ?? '{}') as Record<string, Typed>,
  );
  const [also, setAlso] = useState<readonly string[]>([]);
  const client = useQueryClient();
  useEffect(() => sessionStorage.setItem(draftKey, JSON.stringify(typed)), [draftKey, typed]);
  const open = sheet.lines.filter((line) => line.counted === null);
  const sentOf = (key: string): number => {
    const line = plan?.hardware.lines.find((each) => each.key === key);
    return line ? line.withBox + line.withCart + line.loose + line.spares : (sheet.lines.find((each) => each.key === key)?.fitted ?? 0);
  };
  const rowOf = (key: string): Typed => {
    const row = typed[key] ?? nothing;
    return { ...row, sent: row.sent === '' ? String(sentOf(key)) : row.sent };
  };
  const counted = open.filter((line) => rowOf(line.key).returned.trim() !== '');
  const save = useMutation({
    mutationFn: () =>
      request(recordCounts, {
        tourId: sheet.tourId,
        showIds: [...also, sheet.showId],
        lines: counted.map(({ key }) => {
          const { sent, returned, damaged } = rowOf(key);
          return { key, sent: Number(sent), returned: Number(returned), damaged: Number(damaged || 0) };
        }),
      }),
    onSuccess: async ({ recordCounts: answer }) => {
      if (answer.__typename === 'CountSheet') setTyped({});
      await client.invalidateQueries();
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  const change = (key: string, part: keyof Typed, value: string) =>
    setTyped({ ...typed, [key]: { ...(typed[key] ?? nothing), [part]: value } });
  const refusal = save.data?.recordCounts.__typename === 'CountRefusal' ? save.data.recordCounts.sentence : null;
  const saved = save.data?.recordCounts.__typename === 'CountSheet';
  return (
    <form onSubmit={submit} className="floor counts">
      {saved && (
        <p className="answer" role="status">
          ○ Counted. Plans that use these losses are now stale: plan again to follow.
        </p>
      )}
      {open.length === 0 ? (
        <p>Every line of this show has been counted. A wrong count is corrected under its record.</p>
      ) : (
        <>
          <p>
            Type what came back, and how much of it is unfit. What is not back counts as lost. A line left empty stays open. With its box
            and cart, loose and spare are counted together.
          </p>
          {sheet.notCountedBefore.length > 0 && (
            <fieldset>
              <legend>This count is for {sheet.name}. Nothing was counted after these; count them in:</legend>
              {sheet.notCountedBefore.map(({ showId: show, name }) => (
                <label key={show} className="row tall">
                  <input
                    type="checkbox"
                    className="tickbig"
                    checked={also.includes(show)}
                    onChange={(event) => setAlso(event.target.checked ? [...also, show] : also.filter((each) => each !== show))}
                  />
                  {name}
                </label>
              ))}
            </fieldset>
          )}
          {open.map((line) => (
            <Row key={line.key} line={line} row={rowOf(line.key)} plan={plan} onChange={(part, value) => change(line.key, part, value)} />
          ))}
          <Faults of={save.error} />
          {refusal && <Note weight="stop">{refusal}</Note>}
          <div className="row actions">
            <button type="submit" disabled={save.isPending || counted.length === 0}>
              {counted.length === 0 ? 'Nothing counted yet' : `Record ${counted.length} of ${open.length} lines`}
            </button>
          </div>
        </>
      )}
    </form>
  );
}

function Row({
  line,
  row,
  plan,
  onChange,
}: {
  line: Sheet['lines'][number];
  row: Typed;
  plan: PackPlan | undefined;
  onChange: (part: keyof Typed, value: string) => void;
}) {
  const name = `${line.item}, ${line.key}`;
  const lots = plan?.hardware.lines.find((each) => each.key === line.key)?.takenFrom ?? [];
  const lost = row.returned.trim() === '' ? 0 : gone(row);
  const field = (part: keyof Typed, label: string) => (
    <label>
      {label}
      <input
        inputMode="numeric"
        aria-label={`${name}: ${label}`}
        value={row[part]}
        onChange={(event) => onChange(part, event.target.value)}
      />
    </label>
  );
  return (
    <fieldset>
      <legend>{name}</legend>
      <div className="trio">
        {field('sent', 'Sent')}
        {field('returned', 'Back')}
        {field('damaged', 'Of those unfit')}
        <button type="button" className="plain" aria-label={`${name}: all back`} onClick={() => onChange('returned', row.sent)}>
          All back
        </button>
      </div>
      {lost > 0 && (
        <p className="said">
          ◐ {lost} gone or unfit.{' '}
          {lots.length > 0 && (
            <>
              Put the batch right as well:{' '}
              {lots.map(({ lot }, index) => (
                <span key={lot}>
                  {index > 0 && ', '}
                  <Link to={`/register/${lot}`}>{lot}</Link>
                </span>
              ))}
              .
            </>
          )}
        </p>
      )}
      {lost < 0 && <p className="said">■ More came back than was sent: type what was sent, or keep foreign pieces apart.</p>}
    </fieldset>
  );
}
