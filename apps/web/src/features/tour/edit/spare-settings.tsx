import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useFieldArray } from 'react-hook-form';
import type { z } from 'zod';
import { graphql } from '#contracts';
import { request } from '../../../platform/request.js';
import type { Tour } from '#tour-file';
import { Choice, Figure, Form, Tick, useTypedForm } from '../../../ui/form.js';
import { Loaded } from '../../../ui/page.js';
import { useTourSave } from './use-tour-save.js';
import { fieldOfSpares, rowOf, sparesOf, typedSpares } from './spare-rows.js';

const modelsQuery = graphql(`query HardwareModels { catalogueModels { kind model } }`);
const kinds = ['pins', 'shackles', 'slings', 'looms', 'hoists', 'frames', 'cells', 'controls', 'aids'];

/** Level of the hardware trunk and of its lines, and what is believed of the losses. */
export function SpareSettings({ tour, version }: { tour: Tour; version: number }) {
  const query = useQuery({ queryKey: ['hardware-models'], queryFn: () => request(modelsQuery) });
  return (
    <Loaded query={query}>
      {({ catalogueModels: all }) => (
        <SparesForm
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

function SparesForm({ tour, version, models }: { tour: Tour; version: number; models: readonly string[] }) {
  const form = useTypedForm(typedSpares, {
    level: tour.spareTrunk ? percent(tour.spareTrunk.level) : '',
    least: tour.spareTrunk?.least ?? 'mass',
    rows: tour.spares.map((each) => rowOf(each)),
  });
  const { fields: rows, append, remove } = useFieldArray({ control: form.control, name: 'rows' });
  const saveIt = useTourSave({ tour, version }, form.formState.isDirty);
  const client = useQueryClient();
  const save = useMutation({
    mutationFn: ({ level, least, rows: read }: z.output<typeof typedSpares>) => {
      const trunk = level === undefined ? {} : { spareTrunk: { level: level / 100, least } };
      return saveIt(({ spareTrunk: _before, ...rest }) => ({ ...rest, ...trunk, spares: sparesOf(read, tour.spares) }));
    },
    onSuccess: async () => {
      form.reset(form.getValues());
      await client.invalidateQueries();
    },
  });
  return (
    <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error} fieldOf={fieldOfSpares}>
      <p>
        {tour.spareTrunk
          ? `Wanted: no line runs short on ${percent(tour.spareTrunk.level)} % of tours, at least ${tour.spareTrunk.least}.`
          : 'No level is wanted for the whole trunk; each line has its own.'}{' '}
        {rows.length} {rows.length === 1 ? 'line has' : 'lines have'} losses on file.
      </p>
      <details>
        <summary>Levels and losses</summary>
        <div className="fields">
          <Figure name="level" label="Level of the whole trunk" unit="%" description="empty: each line by its own level" />
          <Choice name="least" label="Kept least" choices={leastChoices} />
        </div>
        <p className="quiet">
          Losses believed in so many uses: one piece fitted for one show is one use. A line that learns starts from there and takes in what
          is counted at return; another keeps what is filed. A line without a level of its own follows the trunk’s.
        </p>
        {rows.map((row, index) => (
          <SpareLine key={row.id} item={row.item} index={index} onRemove={() => remove(index)} />
        ))}
        <AddLine
          models={models.filter((model) => !rows.some((row) => row.item === model))}
          onAdd={(item) => append({ item, losses: '1', uses: '1000', learns: true, level: '', stopsAShow: true })}
        />
        <p>
          <button type="submit" disabled={save.isPending}>
            Save the spares
          </button>
        </p>
      </details>
    </Form>
  );
}

function AddLine({ models, onAdd }: { models: readonly string[]; onAdd: (model: string) => void }) {
  if (models.length === 0) return null;
  return (
    <label>
      Add a line
      <select value="" onChange={(event) => onAdd(event.target.value)}>
        <option value="">choose a model</option>
        {models.map((model) => (
          <option key={model}>{model}</option>
        ))}
      </select>
    </label>
  );
}

const percent = (level: number): string => String(Number((level * 100).toFixed(4)));
const leastChoices = [
  ['mass', 'mass'],
  ['cost', 'cost'],
] as const;

function SpareLine({ item, index, onRemove }: { item: string; index: number; onRemove: () => void }) {
  const figure = (part: string, label: string) => <Figure name={`rows.${index}.${part}`} label={label} ariaLabel={`${item}: ${label}`} />;
  return (
    <fieldset>
      <legend>{item}</legend>
      <div className="trio">
        {figure('losses', 'Losses believed')}
        {figure('uses', 'in uses')}
        {figure('level', 'Own level, %')}
        <button type="button" className="plain" aria-label={`${item}: remove`} onClick={onRemove}>
          Remove
        </button>
      </div>
      <div className="row">
        <Tick name={`rows.${index}.learns`} label="learns from counts" />
        <Tick name={`rows.${index}.stopsAShow`} label="stops a show: at least one spare" />
      </div>
    </fieldset>
  );
}
