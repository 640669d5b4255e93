import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useId, useState } from 'react';
import { graphql } from '#contracts';
import type { LoadRule } from '#tour-file';
import { placeName } from '#trade';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { useRuledPlaces } from '../../platform/ruled-places.js';
import { Faults } from '../../ui/faults.js';
import { placesFor } from '../../ui/places.js';
import { useEditBegun } from './edit-begun.js';
import { type RegimeText, regimeFrom, regimeSections, regimeText } from './regime-text.js';

const saveMutation = graphql(
  `mutation SaveLoadRule($rule: ModelJson!, $was: ModelJson, $reason: String) { saveLoadRule(rule: $rule, was: $was, reason: $reason) }`,
);

/** A load regime: what it multiplies, what share of a rated load it allows when, each value with its source and whether it was seen there. */
export function RegimePart({ rule, me }: { rule: LoadRule; me: Person }) {
  const text = regimeText(rule);
  const edit = useEditBegun(rule);
  return (
    <div>
      <h3>Load regime {rule.id}</h3>
      <p>
        {rule.title}. {placeName(rule.jurisdiction)}
        {rule.edition ? `, edition ${rule.edition}` : ''}. Source: {rule.source} ({rule.status}).
      </p>
      <ul>
        {regimeSections.map(({ key, title }) => (
          <li key={key}>
            {title}:{' '}
            {text.sections[key] ? (
              <>
                {text.sections[key].values.split('\n').join(' · ')}{' '}
                <span className="quiet">
                  ({text.sections[key].source}; {text.sections[key].status})
                </span>
              </>
            ) : (
              'no rule on file'
            )}
          </li>
        ))}
      </ul>
      {me.role !== 'warehouse' && (
        <details>
          <summary>Change the regime {rule.id}</summary>
          <RegimeForm
            key={JSON.stringify(edit.from)}
            from={regimeText(edit.from)}
            was={() => edit.read(edit.from)}
            asksWhy={me.role === 'safety'}
            onBegin={edit.begin}
            onRefused={edit.hear}
            onSaved={edit.end}
          />
        </details>
      )}
    </div>
  );
}

const statuses = ['found', 'from memory', 'house rule'];

/** A regime as it is typed, on file already (`was`: as it was read) or new. */
export function RegimeForm({
  from,
  was,
  asksWhy = false,
  onBegin,
  onRefused,
  onSaved,
}: {
  from: RegimeText;
  was: () => object | null;
  asksWhy?: boolean;
  onBegin?: () => void;
  onRefused?: (fault: unknown) => void;
  onSaved: () => void;
}) {
  const [reason, setReason] = useState('');
  const [text, setText] = useState<RegimeText>(from);
  const ruled = useRuledPlaces();
  const placeId = useId();
  const client = useQueryClient();
  const save = useMutation({
    mutationFn: () => request(saveMutation, { rule: regimeFrom(text), was: was(), reason }),
    ...(onRefused && { onError: onRefused }),
    onSuccess: () => client.invalidateQueries().then(onSaved),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  const head = (key: keyof RegimeText['head'], label: string) => (
    <label>
      {label}
      <input value={text.head[key]} onChange={(event) => setText({ ...text, head: { ...text.head, [key]: event.target.value } })} />
    </label>
  );
  const status = (value: string, onChange: (value: string) => void) => (
    <label>
      Seen there?
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {statuses.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
    </label>
  );
  return (
    <form onSubmit={submit} onInput={onBegin}>
      <div className="fields">
        {head('id', 'Short name')}
        <div>
          <label htmlFor={placeId}>Jurisdiction</label>
          <select
            id={placeId}
            value={text.head.jurisdiction}
            onChange={(event) => setText({ ...text, head: { ...text.head, jurisdiction: event.target.value } })}
          >
            {placesFor(text.head.jurisdiction, ruled).map(([code, word]) => (
              <option key={code} value={code}>
                {word}
              </option>
            ))}
          </select>
        </div>
        {head('title', 'Title')}
        {head('edition', 'Edition')}
        {head('source', 'Source')}
        {status(text.head.status, (value) => setText({ ...text, head: { ...text.head, status: value } }))}
        {head('dynamicFactor', 'Factor on point loads')}
        {head('usableShareWithPersonsBelow', 'Usable share with persons below, where nothing closer is given')}
      </div>
      {regimeSections.map(({ key, title, hint }) => {
        const section = text.sections[key];
        const set = (next: Partial<NonNullable<typeof section>>) =>
          setText({
            ...text,
            sections: { ...text.sections, [key]: { source: '', status: 'house rule', values: '', ...section, ...next } },
          });
        return (
          <fieldset key={key}>
            <legend>{title}</legend>
            <div className="fields">
              <label>
                {hint}
                <textarea
                  rows={Math.max(1, (section?.values ?? '').split('\n').length)}
                  value={section?.values ?? ''}
                  onChange={(event) => set({ values: event.target.value })}
                />
              </label>
              <label>
                Source
                <input value={section?.source ?? ''} onChange={(event) => set({ source: event.target.value })} />
              </label>
              {status(section?.status ?? 'house rule', (value) => set({ status: value }))}
            </div>
          </fieldset>
        );
      })}
      <p className="quiet">A section without values has no rule; what would need it is then reported as not compared.</p>
      {asksWhy && (
        <div className="fields">
          <label>
            Why more is let pass than before, where it is
            <input value={reason} maxLength={300} onChange={(event) => setReason(event.target.value)} />
          </label>
        </div>
      )}
      <Faults of={save.error} />
      <button type="submit" disabled={save.isPending}>
        Save the regime
      </button>
    </form>
  );
}
