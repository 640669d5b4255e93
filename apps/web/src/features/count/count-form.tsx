import { useEffect, useState } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { z } from 'zod';
import type { HardwareResult } from '#pack-plan';
import { Figure, Form, useTypedForm } from '../../ui/form.js';
import { figureOrNothing } from '../../ui/typed.js';
import { useCounting } from './use-counting.js';
import type { Sheet } from './use-count-sheet.js';

const pieces = figureOrNothing('a whole number from 0, or nothing', { min: 0, whole: true });
const typedLine = z.object({ sent: pieces, returned: pieces, damaged: pieces, lot: z.string() });
const typedCounts = z.object({ also: z.record(z.string(), z.boolean()), lines: z.record(z.string(), typedLine) });
type Typed = z.input<typeof typedCounts>;
type Line = Sheet['lines'][number];

const nothing = { sent: '', returned: '', damaged: '', lot: '' };
/** Nobody's batch is made smaller. */
const noLot = 'none';
const gone = (row: z.input<typeof typedLine>): number => Number(row.sent) - Number(row.returned) + Number(row.damaged || 0);
/** A field's name may hold no point: it would be read as a path. */
const nameOf = (key: string): string => encodeURIComponent(key).replaceAll('.', '%2E');

/** What was typed and not yet sent stays in this browser's tab. */
function useDraft(draftKey: string, empty: Typed) {
  const [kept] = useState(() => JSON.parse(sessionStorage.getItem(draftKey) ?? '{"lines":{}}') as Partial<Typed>);
  const [from] = useState<Typed>({ also: empty.also, lines: { ...empty.lines, ...kept.lines } });
  const form = useTypedForm(typedCounts, from);
  const typed = useWatch({ control: form.control }) as Typed;
  useEffect(() => sessionStorage.setItem(draftKey, JSON.stringify({ lines: typed.lines })), [draftKey, typed]);
  return { form, typed };
}

/** One line a model: sent as planned unless typed otherwise; a line without "back" is not counted and stays open. */
export function CountForm({ sheet, hardware }: { sheet: Sheet; hardware: HardwareResult | undefined }) {
  const empty: Typed = { also: {}, lines: Object.fromEntries(sheet.lines.map(({ key }) => [nameOf(key), nothing])) };
  const { form, typed } = useDraft(`counts ${sheet.tourId} ${sheet.showId}`, empty);
  const counts = useCounting(sheet);
  const open = sheet.lines.filter((line) => line.counted === null && !counts.onTheirWay.has(line.key));
  const sentOf = (line: Line): number => {
    const planned = hardware?.lines.find((each) => each.key === line.key);
    return planned ? planned.withBox + planned.withCart + planned.loose + planned.spares : line.fitted;
  };
  const counted = open.filter(({ key }) => (typed.lines[nameOf(key)]?.returned ?? '').trim() !== '');
  const save = ({ also, lines }: z.output<typeof typedCounts>) => {
    const showIds = [...sheet.notCountedBefore.map((each) => each.showId).filter((show) => also[nameOf(show)]), sheet.showId];
    const records = open.flatMap((line) => {
      const { sent = sentOf(line), returned, damaged = 0, lot = '' } = lines[nameOf(line.key)] ?? {};
      if (returned === undefined) return [];
      const from = lot === '' ? lotsOf(hardware, line.key)[0] : lot === noLot ? undefined : lot;
      const isLess = sent - returned + damaged > 0;
      const lots = from !== undefined && isLess ? [{ lot: from, lost: sent - returned, unfit: damaged }] : [];
      return [{ key: line.key, sent, returned, damaged, lots }];
    });
    counts.record(showIds, records, () => form.reset(empty));
  };
  return (
    <Form form={form} onSubmit={save} error={counts.unkept} className="floor counts">
      {counts.onTheirWay.size > 0 && <p role="status">◐ Counted on this device; it is on its way.</p>}
      {counts.isTaken && (
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
          <AlsoCounted sheet={sheet} />
          {open.map((line) => (
            <Row key={line.key} line={line} typed={typed.lines[nameOf(line.key)] ?? nothing} planned={sentOf(line)} hardware={hardware} />
          ))}
          <div className="row actions">
            <button type="submit" disabled={counted.length === 0}>
              {counted.length === 0 ? 'Nothing counted yet' : `Record ${counted.length} of ${open.length} lines`}
            </button>
          </div>
        </>
      )}
    </Form>
  );
}

/** Batches that the pieces of a line are of, that with the most first. */
const lotsOf = (hardware: HardwareResult | undefined, key: string): readonly string[] =>
  [...(hardware?.lines.find((each) => each.key === key)?.takenFrom ?? [])].sort((a, b) => b.count - a.count).map((each) => each.lot);

function AlsoCounted({ sheet }: { sheet: Sheet }) {
  const { register } = useFormContext();
  if (sheet.notCountedBefore.length === 0) return null;
  return (
    <fieldset>
      <legend>This count is for {sheet.name}. Nothing was counted after these; count them in:</legend>
      {sheet.notCountedBefore.map(({ showId: show, name }) => (
        <label key={show} className="row tall">
          <input type="checkbox" className="tickbig" {...register(`also.${nameOf(show)}`)} />
          {name}
        </label>
      ))}
    </fieldset>
  );
}

interface RowProps {
  readonly line: Line;
  readonly typed: z.input<typeof typedLine>;
  readonly planned: number;
  readonly hardware: HardwareResult | undefined;
}

function Row({ line, typed, planned, hardware }: RowProps) {
  const { setValue } = useFormContext();
  const name = `${line.item}, ${line.key}`;
  const lots = lotsOf(hardware, line.key);
  const sent = typed.sent.trim() === '' ? String(planned) : typed.sent;
  const lost = typed.returned.trim() === '' ? 0 : gone({ ...typed, sent });
  const at = (part: string) => `lines.${nameOf(line.key)}.${part}`;
  const field = (part: 'sent' | 'returned' | 'damaged', label: string, placeholder?: string) => (
    <Figure name={at(part)} label={label} ariaLabel={`${name}: ${label}`} placeholder={placeholder} />
  );
  return (
    <fieldset>
      <legend>{name}</legend>
      <div className="trio">
        {field('sent', 'Sent', String(planned))}
        {field('returned', 'Back')}
        {field('damaged', 'Of those unfit')}
        <button
          type="button"
          className="plain"
          aria-label={`${name}: all back`}
          onClick={() => setValue(at('returned'), sent, { shouldDirty: true, shouldValidate: true })}
        >
          All back
        </button>
      </div>
      {lost > 0 && <Lost lost={lost} lots={lots} name={at('lot')} />}
      {lost < 0 && <p className="said">■ More came back than was sent: type what was sent, or keep foreign pieces apart.</p>}
    </fieldset>
  );
}

function Lost({ lost, lots, name }: { lost: number; lots: readonly string[]; name: string }) {
  const { register } = useFormContext();
  return (
    <div className="said">
      ◐ {lost} gone or unfit.{' '}
      {lots.length > 0 && (
        <label>
          Taken out of
          <select {...register(name)}>
            {lots.map((lot, index) => (
              <option key={lot} value={index === 0 ? '' : lot}>
                batch {lot}
              </option>
            ))}
            <option value={noLot}>no batch: it is put right elsewhere</option>
          </select>
        </label>
      )}
    </div>
  );
}
