import { useState } from 'react';
import { useFormContext } from 'react-hook-form';
import { Choice, Field } from '../../../ui/form.js';
import { zoneChoices } from '../../../ui/places.js';

/** All but the name, which is asked for in other words with a tour than alone. */
export function ShowFields() {
  const [onFile] = useState<string>(useFormContext().getValues('timeZone') as string);
  return (
    <>
      <Field name="venue" label="Venue" />
      <Choice name="timeZone" label="Time zone of the venue" choices={zoneChoices(onFile)} />
      <Field name="from" label="Load-in day" type="date" />
      <Field name="to" label="Load-out day" type="date" />
    </>
  );
}
