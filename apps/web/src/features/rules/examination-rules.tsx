import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { graphql } from '#contracts';
import { type ExaminationRule, itemKinds } from '#tour-file';
import { placeName } from '#trade';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';
import { PlaceChoice, whyNoPlace } from '../../ui/places.js';
import { filled, manyWords } from '../../ui/typed.js';
import { type StarterSet, starterSets } from './starter-sets.js';

const addMutation = graphql(`mutation AddExaminationRules($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }`);
const removeMutation = graphql(
  `mutation RemoveExaminationRule($rule: ModelJson!, $reason: String!) { removeExaminationRule(rule: $rule, reason: $reason) }`,
);

const statusWords: Record<ExaminationRule['status'], string> = {
  found: 'read there',
  'house rule': 'house rule',
  'from memory': 'not read: from memory, no authority',
};

const keyOf = ({ jurisdiction, kinds, intervals }: ExaminationRule): string => `${jurisdiction}: ${kinds.join()}: ${intervals.join()}`;

/** How often what is examined: what holds here, sets to begin with, and rules of one's own. */
export function ExaminationRules({ rules, me }: { rules: readonly ExaminationRule[]; me: Person }) {
  const isOfficer = actsAsOfficer(me, 'the house');
  const known = new Set(rules.map(keyOf));
  return (
    <>
      {rules.length === 0 && (
        <p>
          No examination rule is on file. Without one an item is judged by its failures, events and defects alone, and nothing runs out.
        </p>
      )}
      <RuleList rules={rules} isOfficer={isOfficer} />
      {isOfficer ? <NewRule /> : <p className="quiet">The safety officer writes examination rules.</p>}
      {starterSets.map((set) => (
        <Starter key={set.title} set={set} known={known} isOfficer={isOfficer} />
      ))}
    </>
  );
}

function RuleList({ rules, isOfficer }: { rules: readonly ExaminationRule[]; isOfficer: boolean }) {
  const [leaving, setLeaving] = useState<string | null>(null);
  return (
    <ul>
      {rules.map((rule) => (
        <li key={keyOf(rule)}>
          <RuleLine rule={rule} />{' '}
          {isOfficer && leaving !== keyOf(rule) && (
            <button
              type="button"
              className="plain small"
              aria-label={`Take out the rule of ${placeName(rule.jurisdiction)} for ${rule.kinds.join(', ')}`}
              onClick={() => setLeaving(keyOf(rule))}
            >
              Take it out ...
            </button>
          )}
          {leaving === keyOf(rule) && <TakeOut rule={rule} onKeep={() => setLeaving(null)} />}
        </li>
      ))}
    </ul>
  );
}

const typedReason = z.object({ reason: filled('why it no longer holds') });

/** A rule less lets more pass: said before, and kept with its reason. */
function TakeOut({ rule, onKeep }: { rule: ExaminationRule; onKeep: () => void }) {
  const form = useTypedForm(typedReason, { reason: '' });
  const client = useQueryClient();
  const remove = useMutation({
    mutationFn: ({ reason }: z.output<typeof typedReason>) => request(removeMutation, { rule, reason }),
    onSuccess: () => client.invalidateQueries(),
  });
  return (
    <Form form={form} onSubmit={(typed) => remove.mutate(typed)} error={remove.error}>
      <p>
        Without it, {rule.kinds.join(', ')} of tours under {placeName(rule.jurisdiction)} no longer run out by it. Plans that were made with
        it are stale.
      </p>
      <Field name="reason" label="Why it no longer holds" />
      <div className="row">
        <button type="submit" disabled={remove.isPending}>
          Take the rule out
        </button>
        <button type="button" className="plain" onClick={onKeep}>
          Keep it
        </button>
      </div>
    </Form>
  );
}

const noPlace = ({ jurisdiction }: ExaminationRule): string => {
  const why = whyNoPlace(jurisdiction);
  return why === undefined ? '' : `■ ${why}: no tour is judged by this rule. Make it anew there and take this one out. `;
};

const RuleLine = ({ rule }: { rule: ExaminationRule }) => (
  <>
    {placeName(rule.jurisdiction)}: {rule.kinds.join(', ')} every {rule.intervals.map(periodWords).join(' and ')}
    {rule.who ? `; by: ${rule.who}` : ''}. {noPlace(rule)}
    <span className="quiet">
      {rule.source} ({statusWords[rule.status]})
    </span>
  </>
);

/** "P6M" as people say it; another form of ISO 8601 as it is written. */
function periodWords(period: string): string {
  const [, number, unit] = /^P(\d+)([DWMY])$/.exec(period) ?? [];
  const word = { D: 'day', W: 'week', M: 'month', Y: 'year' }[unit ?? ''];
  return number === undefined || word === undefined ? period : `${number} ${word}${number === '1' ? '' : 's'}`;
}

function Starter({ set, known, isOfficer }: { set: StarterSet; known: ReadonlySet<string>; isOfficer: boolean }) {
  const client = useQueryClient();
  const missing = set.rules.filter((rule) => !known.has(keyOf(rule)));
  const add = useMutation({
    mutationFn: () => request(addMutation, { rules: [...missing] }),
    onSuccess: () => client.invalidateQueries(),
  });
  return (
    <details>
      <summary>{set.title}</summary>
      <ul>
        {set.rules.map((rule) => (
          <li key={keyOf(rule)}>
            <RuleLine rule={rule} /> {known.has(keyOf(rule)) && '○ on file'}
          </li>
        ))}
      </ul>
      {set.open.map((each) => (
        <p key={each}>{each}</p>
      ))}
      <p className="caution">
        A set to begin with, not advice. The safety officer compares it with the law and the rules that hold where you work.
      </p>
      {isOfficer && missing.length > 0 && (
        <button type="button" disabled={add.isPending} onClick={() => add.mutate()}>
          Put {missing.length === 1 ? 'this rule' : `these ${missing.length} rules`} on file
        </button>
      )}
      <Faults of={add.error} />
    </details>
  );
}

const typedRule = z.object({
  jurisdiction: filled('a country'),
  part: z
    .string()
    .trim()
    .regex(/^([A-Z0-9]{1,3})?$/, 'the letters after the country’s, such as CA of US-CA, or nothing'),
  kinds: manyWords('kinds of items, with commas between'),
  intervals: manyWords('periods of ISO 8601, such as P6M or P1Y'),
  who: z.string().trim(),
  source: filled('where it stands'),
  status: z.string(),
});
const noRule = { jurisdiction: '', part: '', kinds: '', intervals: '', who: '', source: '', status: 'house rule' };

function NewRule() {
  const form = useTypedForm(typedRule, noRule);
  const client = useQueryClient();
  const add = useMutation({
    mutationFn: ({ who, part, jurisdiction: country, ...typed }: z.output<typeof typedRule>) => {
      const rest = { ...typed, jurisdiction: part === '' ? country : `${country}-${part}` };
      return request(addMutation, { rules: [who === '' ? rest : { ...rest, who }] });
    },
    onSuccess: async () => {
      form.reset(noRule);
      await client.invalidateQueries();
    },
  });
  return (
    <details>
      <summary>Make an examination rule</summary>
      <Form form={form} onSubmit={(typed) => add.mutate(typed)} error={add.error} fieldOf={(path) => /^rules\[0\]\.(\w+)/.exec(path)?.[1]}>
        <div className="fields">
          <PlaceChoice name="jurisdiction" label="Country" ruled={[]} />
          <Field
            name="part"
            label="Part of it"
            description="where it has rules of its own: CA of US-CA (ISO 3166-2); empty: the whole country"
          />
          <Field name="kinds" label="Kinds of items" description={`some of ${itemKinds.join(', ')}`} />
          <Field name="intervals" label="Intervals" description="P6M: every 6 months; with commas between: each counts for itself" />
          <Field name="who" label="By whom" />
          <Field name="source" label="Source" />
          <Choice
            name="status"
            label="Was it read there?"
            choices={[
              ['house rule', 'a rule of this company'],
              ['found', 'read in the text itself'],
              ['from memory', 'from memory: no authority'],
            ]}
          />
        </div>
        <button type="submit" disabled={add.isPending}>
          Put the rule on file
        </button>
      </Form>
    </details>
  );
}
