import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { ExaminationRule } from '#tour-file';
import { placeName } from '#trade';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { filled } from '../../ui/typed.js';
import { RuleEditions } from './rule-editions.js';
import { RuleForm } from './rule-form.js';
import { Note } from '../../ui/notes.js';
import { RuleLine } from './rule-line.js';
import { asksTheSame, keyOf } from './rule-text.js';
import { type StarterSet, starterSets } from './starter-sets.js';

const addMutation = graphql(`mutation AddExaminationRules($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }`);
const removeMutation = graphql(
  `mutation RemoveExaminationRule($rule: ModelJson!, $reason: String!) { removeExaminationRule(rule: $rule, reason: $reason) }`,
);

/** How often what is examined: what holds here, sets to begin with, and rules of one's own. */
export function ExaminationRules({ rules, me }: { rules: readonly ExaminationRule[]; me: Person }) {
  const isOfficer = actsAsOfficer(me, 'the house');
  const onFile = new Map(rules.map((rule) => [keyOf(rule), rule]));
  return (
    <>
      {rules.length === 0 && (
        <p>
          No examination rule is on file. Without one an item is judged by its failures, events and defects alone, and nothing runs out.
        </p>
      )}
      <RuleList rules={rules} isOfficer={isOfficer} />
      {isOfficer ? (
        <details>
          <summary>Make an examination rule</summary>
          <RuleForm was={null} />
        </details>
      ) : (
        <p className="quiet">The safety officer writes examination rules.</p>
      )}
      <Opened summary="All changes of examination rules">
        <RuleEditions />
      </Opened>
      {starterSets.map((set) => (
        <Starter key={set.title} set={set} onFile={onFile} isOfficer={isOfficer} />
      ))}
    </>
  );
}

/** Read and made when it is opened. */
function Opened({ summary, children }: { summary: string; children: ReactNode }) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {isOpen && children}
    </details>
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
              aria-label={`Take it out ... The rule of ${placeName(rule.jurisdiction)} for ${rule.kinds.join(', ')}`}
              onClick={() => setLeaving(keyOf(rule))}
            >
              Take it out ...
            </button>
          )}
          {leaving === keyOf(rule) && <TakeOut rule={rule} onKeep={() => setLeaving(null)} />}
          {isOfficer && (
            <Opened summary={`Change the rule of ${placeName(rule.jurisdiction)} for ${rule.kinds.join(', ')}`}>
              <RuleForm was={rule} />
            </Opened>
          )}
          <Opened summary="What it was before">
            <RuleEditions rule={rule} />
          </Opened>
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

/** A rule of a set beside what is on file: the same, one that asks otherwise, or none. */
function Standing({ rule, held }: { rule: ExaminationRule; held: ExaminationRule | undefined }) {
  if (!held) return null;
  if (asksTheSame(rule, held)) return <>○ on file</>;
  return (
    <Note weight="look">
      A rule with these intervals is on file, and asks otherwise of who examines, what is recorded or how long it is kept. Change that rule
      above if this one is to hold.
    </Note>
  );
}

function Starter({ set, onFile, isOfficer }: { set: StarterSet; onFile: ReadonlyMap<string, ExaminationRule>; isOfficer: boolean }) {
  const client = useQueryClient();
  const missing = set.rules.filter((rule) => !onFile.has(keyOf(rule)));
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
            <RuleLine rule={rule} /> <Standing rule={rule} held={onFile.get(keyOf(rule))} />
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
