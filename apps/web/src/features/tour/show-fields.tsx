import { useState } from 'react';
import { useFormContext } from 'react-hook-form';
import { z } from 'zod';
import { Choice, Field } from '../../ui/form.js';
import { zoneChoices } from '../../ui/places.js';
import { day, filled } from '../../ui/typed.js';

/** A new show as it is typed. */
export const typedShow = z.object({
  show: filled('a name'),
  venue: filled('a name'),
  timeZone: filled('a zone'),
  from: day,
  to: day,
});

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

/** Where a fault of a show that is being made belongs. */
export const fieldOfNewShow = (path: string): string | undefined => {
  const part = /shows\[\d+\]\.(\w+)$/.exec(path)?.[1];
  return part === 'name' || part === 'id' ? 'show' : part;
};
