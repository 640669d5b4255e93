import { useFieldArray } from 'react-hook-form';
import { z } from 'zod';
import type { Show } from '#tour-file';
import { Field, Figure } from '../../../ui/form.js';
import { figureOrNothing, filled } from '../../../ui/typed.js';

type Beam = NonNullable<Show['beams']>[number];

const height = figureOrNothing('a height in millimetres, or nothing', { over: 0, under: 100_000 });

/** A truss or beam as it is typed; a load in another unit than kilonewtons stays as it is filed while nobody changes it. */
const typedBeam = z.object({
  name: filled('a name'),
  highSteelMm: height,
  lowSteelMm: height,
  allowedKn: figureOrNothing('a load in kilonewtons, or nothing', { over: 0, under: 10_000_000 }),
  allowedBy: z.string().trim(),
});

export const typedBeams = z.array(typedBeam).max(50);

const text = (value: number | undefined): string => (value === undefined ? '' : String(value));

export const beamRows = (beams: Show['beams'] = []): z.input<typeof typedBeams> =>
  beams.map(({ name, highSteelMm, lowSteelMm, allowed, allowedBy = '' }) => ({
    name,
    highSteelMm: text(highSteelMm),
    lowSteelMm: text(lowSteelMm),
    allowedKn: allowed?.unit === 'kN' ? text(allowed.value) : '',
    allowedBy,
  }));

/** What is filed; of a beam whose load is filed in another unit and was left empty that load is kept. */
export const beamsOf = (rows: z.output<typeof typedBeams>, before: Show['beams'] = []): readonly Beam[] =>
  rows.map(({ name, highSteelMm, lowSteelMm, allowedKn, allowedBy }) => {
    const filed = before.find((each) => each.name === name)?.allowed;
    const allowed = allowedKn === undefined ? (filed?.unit === 'kN' ? undefined : filed) : { value: allowedKn, unit: 'kN' as const };
    return {
      name,
      ...(highSteelMm === undefined ? {} : { highSteelMm }),
      ...(lowSteelMm === undefined ? {} : { lowSteelMm }),
      ...(allowed ? { allowed } : {}),
      ...(allowedBy === '' ? {} : { allowedBy }),
    };
  });

/** Trusses and beams of a show, row by row. */
export function BeamFields() {
  const { fields, append, remove } = useFieldArray({ name: 'beams' });
  return (
    <fieldset>
      <legend>Trusses and beams that points are on</legend>
      {fields.map((each, index) => (
        <div className="fields" key={each.id}>
          <Field name={`beams.${index}.name`} label="Name" />
          <Figure name={`beams.${index}.highSteelMm`} label="High steel" unit="mm" />
          <Figure name={`beams.${index}.lowSteelMm`} label="Low steel" unit="mm" />
          <Figure name={`beams.${index}.allowedKn`} label="May carry in all" unit="kN" />
          <Field name={`beams.${index}.allowedBy`} label="Who says so" />
          <button type="button" className="plain small" onClick={() => remove(index)}>
            Remove this beam
          </button>
        </div>
      ))}
      <button
        type="button"
        className="plain small"
        onClick={() => append({ name: '', highSteelMm: '', lowSteelMm: '', allowedKn: '', allowedBy: '' })}
      >
        Add a truss or beam
      </button>
    </fieldset>
  );
}
