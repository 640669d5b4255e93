import type { Hang } from '#tour-file';
import { FieldError, NumberField, TextField } from '../../../ui/form.js';

type Allowed = Hang['picks'][number]['structure'];

/** What the structure is said to carry at a point, a leg or an anchor, known or not on file, and by whom; `name`: the point in the form. */
export function StructureFields({
  name,
  allowed,
  label,
  onChange,
}: {
  name: string;
  allowed: Allowed;
  label: string;
  onChange: (allowed: Allowed) => void;
}) {
  return (
    <>
      {allowed ? (
        <div>
          <NumberField name={`${name}.structure.value`} label={label} unit={allowed.unit} />
          <FieldError name={`${name}.structure`} />
          <button type="button" className="plain small" onClick={() => onChange(undefined)}>
            Not on file
          </button>
        </div>
      ) : (
        <button type="button" className="plain small" onClick={() => onChange({ value: undefined as unknown as number, unit: 'kN' })}>
          {label}: enter a figure
        </button>
      )}
      <TextField name={`${name}.structureBy`} label={`${label}: who says so`} />
    </>
  );
}
