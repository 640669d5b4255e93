import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { z } from 'zod';
import { graphql } from '#contracts';
import type { ExaminationRule } from '#tour-file';
import { request } from '../../platform/request.js';
import { recordFields } from '#trade';
import { english } from '#words';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';
import { PlaceChoice } from '../../ui/places.js';
import { choices, kindsSaid, noRule, ruleFrom, ruleText, typedRule } from './rule-text.js';

const addMutation = graphql(`mutation AddExaminationRule($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }`);
const changeMutation = graphql(
  `mutation ChangeExaminationRule($was: ModelJson!, $rule: ModelJson!, $reason: String!) { changeExaminationRule(was: $was, rule: $rule, reason: $reason) }`,
);

const fieldNames: Readonly<Record<string, string>> = { atLeast: 'keptFor', retention: 'keptFor', record: 'list', fields: 'fields' };

/** `rules[0].retention.atLeast` and `rule.retention.atLeast` are said beside "kept for". */
function fieldOf(path: string): string | undefined {
  const names = path.replaceAll(/\[\d+\]/g, '').split('.');
  const last = names.at(-1) ?? '';
  return fieldNames[last] ?? (names[1] === 'mayExamine' ? 'mayExamine' : last);
}

/** A rule as it is typed: `was` on file, or new. */
export function RuleForm({ was, onSaved }: { was: ExaminationRule | null; onSaved?: () => void }) {
  const from = was ? ruleText(was) : noRule;
  const form = useTypedForm(typedRule, from);
  const client = useQueryClient();
  const save = useMutation({
    mutationFn: (typed: z.output<typeof typedRule>): Promise<unknown> => {
      const rule = ruleFrom(typed, was);
      return was ? request(changeMutation, { was, rule, reason: typed.reason }) : request(addMutation, { rules: [rule] });
    },
    onSuccess: async () => {
      if (!was) form.reset(noRule);
      await client.invalidateQueries();
      onSaved?.();
    },
  });
  const basis = form.watch('basis');
  const list = was?.record && !was.record.list ? [...choices.list, ['own', 'the fields that this rule names'] as const] : choices.list;
  return (
    <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error} fieldOf={fieldOf}>
      <div className="fields">
        <PlaceChoice name="jurisdiction" label="Country" ruled={[]} />
        <Field
          name="part"
          label="Part of it"
          description="where it has rules of its own: CA of US-CA (ISO 3166-2); empty: the whole country"
        />
        <Field name="kinds" label="Kinds of items" description={`some of ${kindsSaid}`} />
        <Choice name="check" label="What is made" choices={choices.check} />
        <Choice name="basis" label="When" choices={choices.basis} />
        {basis === 'time' && (
          <Field name="intervals" label="Intervals" description="6 months, 1 year, 14 days or P6M; with commas between: each by itself" />
        )}
        {(basis === 'lifts' || basis === 'hours') && <Field name="every" label={`After how many ${basis}`} />}
        <Field name="who" label="By whom" />
        <Field name="mayExamine" label="Who may examine" description="capacities to choose from in a record, with ; between" />
        <Choice name="list" label="A record holds" choices={list} />
        <Field
          name="fields"
          label="And these fields"
          description={`of its own, with ; between, of: ${recordFields.map(english.recordField).join('; ')}`}
        />
        <Field
          name="keptFor"
          label="A record is kept for"
          description="2 years or P2Y: from the day of the report; empty: no time is said"
        />
        <Choice name="keptUntil" label="And" choices={choices.keptUntil} />
        <Field name="keptBy" label="Where that stands" />
        <Field name="source" label="Source" />
        <Choice name="status" label="Was it read there?" choices={choices.status} />
        {was && <Field name="reason" label="Why it holds otherwise" description="kept with the edition before" />}
      </div>
      <button type="submit" disabled={save.isPending}>
        {was ? 'Change the rule' : 'Put the rule on file'}
      </button>
    </Form>
  );
}
