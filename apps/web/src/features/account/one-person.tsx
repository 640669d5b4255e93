import { useMutation, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import { useOnePerson } from '../../platform/me.js';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { filled } from '../../ui/typed.js';

const setMutation = graphql(`mutation SetOnePerson($isOn: Boolean!, $reason: String!) { setOnePerson(isOn: $isOn, reason: $reason) }`);
const typed = z.object({ reason: filled('why') });

/** Whether the house asks for two pairs of eyes: on from the start, and set otherwise by its only safety officer. */
export function OnePerson({ me }: { me: Person }) {
  const times = useOnePerson();
  const holds = times[0] !== undefined && !times[0].until;
  const form = useTypedForm(typed, { reason: '' });
  const client = useQueryClient();
  const set = useMutation({
    mutationFn: ({ reason }: z.output<typeof typed>) => request(setMutation, { isOn: !holds, reason }),
    onSuccess: async () => {
      form.reset({ reason: '' });
      await client.invalidateQueries();
    },
  });
  return (
    <>
      <p>
        {holds
          ? '◐ One person judges alone: what would wait for a second person the safety officer accepts with a reason, and every sheet says so.'
          : 'Two: nobody accepts what they proposed, and nobody signs twice in two roles.'}
      </p>
      <ul className="plain">
        {times.map((each) => (
          <li key={each.since} className="quiet">
            One person alone from {momentOf(each.since)}
            {each.until ? ` to ${momentOf(each.until)}` : ''}, set by {each.by}: {each.reason}.
            {each.endedBecause ? ` Ended: ${each.endedBecause}.` : ''}
          </li>
        ))}
      </ul>
      {me.role === 'safety' && (
        <details>
          <summary>
            {holds ? 'Ask for two pairs of eyes again' : 'Your company has one safety officer and nobody for a second pair of eyes'}
          </summary>
          <Form form={form} onSubmit={(of) => set.mutate(of)} error={set.error}>
            <p className="quiet">
              {holds
                ? 'What one person judged stays as it is, and the sheets of what was released meanwhile go on saying so.'
                : 'It stands in the log and on every sheet. It ends by itself when a second safety officer is on file; a deputy is bound by two all the same.'}
            </p>
            <Field name="reason" label="Why" />
            <button type="submit" disabled={set.isPending}>
              {holds ? 'Two judge from now on' : 'One person judges from now on'}
            </button>
          </Form>
        </details>
      )}
    </>
  );
}
