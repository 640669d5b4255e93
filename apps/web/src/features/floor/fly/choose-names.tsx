import { useState } from 'react';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { type Names, isTwo } from './use-names.js';

/** Two people fly a hang: they are named once, before the first hold. */
export function ChooseNames({ given: { me, home }, hang, onChosen }: { given: OnFloor; hang: string; onChosen: (names: Names) => void }) {
  const [names, setNames] = useState<Names>({ leads: me.name, watches: '' });
  const trimmed = { leads: names.leads.trim(), watches: names.watches.trim() };
  return (
    <FloorPage
      name={`${hang}, who flies it`}
      title={hang}
      back={`${home}/fly`}
      foot={
        <button type="button" className="big" disabled={!isTwo(trimmed)} onClick={() => onChosen(trimmed)}>
          These two fly it
        </button>
      }
    >
      <h2>Who flies it?</h2>
      <label>
        Leads the lift
        <input value={names.leads} maxLength={80} onChange={(event) => setNames({ ...names, leads: event.target.value })} />
      </label>
      <label>
        Watches it, another person
        <input value={names.watches} maxLength={80} onChange={(event) => setNames({ ...names, watches: event.target.value })} />
      </label>
    </FloorPage>
  );
}
