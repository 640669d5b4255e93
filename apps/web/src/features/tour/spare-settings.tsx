import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import type { Tour } from '#tour-file';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Loaded } from '../../ui/page.js';
import { saveTour } from './operations.js';
import { type SpareRow, rowOf, sparesOf } from './spare-rows.js';

const modelsQuery = graphql(`query HardwareModels { catalogueModels { kind model } }`);
const kinds = ['pins', 'shackles', 'slings', 'looms', 'hoists'];

/** Level of the hardware trunk and of its lines, and what is believed of the losses. */
export function SpareSettings({ tour, version }: { tour: Tour; version: number }) {
  const query = useQuery({ queryKey: ['hardware-models'], queryFn: () => request(modelsQuery) });
  return (
    <Loaded query={query}>
      {({ catalogueModels: all }) => (
        <Form
          key={version}
          tour={tour}
          version={version}
          models={[
            ...all.filter((each) => kinds.includes(each.kind)).map((each) => each.model),
            ...all.filter((each) => each.kind === 'carts').flatMap(({ model }) => [`${model}, pole`, `${model}, lid`]),
          ]}
        />
      )}
    </Loaded>
  );
}

function Form({ tour, version, models }: { tour: Tour; version: number; models: readonly string[] }) {
  const [rows, setRows] = useState<readonly SpareRow[]>(() => tour.spares.map((each) => rowOf(each)));
  const [level, setLevel] = useState(tour.spareTrunk ? String(Number((tour.spareTrunk.level * 100).toFixed(4))) : '');
  const [least, setLeast] = useState<'mass' | 'cost'>(tour.spareTrunk?.least ?? 'mass');
  const client = useQueryClient();
  const save = useMutation({
    mutationFn: () => {
      const { spareTrunk: _before, ...rest } = tour;
      const trunk = level.trim() === '' ? {} : { spareTrunk: { level: Number(level) / 100, least } };
      return request(saveTour, { tour: { ...rest, ...trunk, spares: sparesOf(rows, tour.spares) }, expectedVersion: version });
    },
    onSuccess: () => client.invalidateQueries(),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  const left = models.filter((model) => !rows.some((row) => row.item === model));
  const change = (index: number, part: Partial<SpareRow>) => setRows(rows.map((row, at) => (at === index ? { ...row, ...part } : row)));
  return (
    <form onSubmit={submit}>
      <p>
        {tour.spareTrunk
          ? `Wanted: no line runs short on ${Number((tour.spareTrunk.level * 100).toFixed(4))} % of tours, at least ${tour.spareTrunk.least}.`
          : 'No level is wanted for the whole trunk; each line has its own.'}{' '}
        {rows.length} {rows.length === 1 ? 'line has' : 'lines have'} losses on file.
      </p>
      <details>
        <summary>Levels and losses</summary>
        <div className="fields">
          <label>
            Level of the whole trunk, %
            <input inputMode="decimal" value={level} onChange={(event) => setLevel(event.target.value)} />
            <small>empty: each line by its own level</small>
          </label>
          <label>
            Kept least
            <select value={least} onChange={(event) => setLeast(event.target.value as 'mass' | 'cost')}>
              <option>mass</option>
              <option>cost</option>
            </select>
          </label>
        </div>
        <p className="quiet">
          Losses believed in so many uses: one piece fitted for one show is one use. A line that learns starts from there and takes in what
          is counted at return; another keeps what is filed. A line without a level of its own follows the trunk’s.
        </p>
        {rows.map((row, index) => (
          <SpareLine
            key={row.item}
            row={row}
            onChange={(part) => change(index, part)}
            onRemove={() => setRows(rows.filter((_, at) => at !== index))}
          />
        ))}
        {left.length > 0 && (
          <label>
            Add a line
            <select
              value=""
              onChange={(event) =>
                setRows([...rows, { item: event.target.value, losses: '1', uses: '1000', learns: true, level: '', stopsAShow: true }])
              }
            >
              <option value="">choose a model</option>
              {left.map((model) => (
                <option key={model}>{model}</option>
              ))}
            </select>
          </label>
        )}
        <Faults of={save.error} />
        <p>
          <button type="submit" disabled={save.isPending}>
            Save the spares
          </button>
        </p>
      </details>
    </form>
  );
}

function SpareLine({ row, onChange, onRemove }: { row: SpareRow; onChange: (part: Partial<SpareRow>) => void; onRemove: () => void }) {
  const number = (part: 'losses' | 'uses' | 'level', label: string) => (
    <label>
      {label}
      <input
        inputMode="decimal"
        aria-label={`${row.item}: ${label}`}
        value={row[part]}
        onChange={(event) => onChange({ [part]: event.target.value })}
      />
    </label>
  );
  const box = (part: 'learns' | 'stopsAShow', label: string) => (
    <label className="row">
      <input
        type="checkbox"
        style={{ width: 24, minHeight: 24 }}
        checked={row[part]}
        onChange={(event) => onChange({ [part]: event.target.checked })}
      />
      {label}
    </label>
  );
  return (
    <fieldset>
      <legend>{row.item}</legend>
      <div className="trio">
        {number('losses', 'Losses believed')}
        {number('uses', 'in uses')}
        {number('level', 'Own level, %')}
        <button type="button" className="plain" aria-label={`${row.item}: remove`} onClick={onRemove}>
          Remove
        </button>
      </div>
      <div className="row">
        {box('learns', 'learns from counts')}
        {box('stopsAShow', 'stops a show: at least one spare')}
      </div>
    </fieldset>
  );
}
