import { useFieldArray } from 'react-hook-form';
import { Field, Figure } from '../../../ui/form.js';

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
