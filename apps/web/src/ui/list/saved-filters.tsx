import { type FormEvent, useState } from 'react';

type Kept = Readonly<Record<string, string>>;

const keyOf = (list: string): string => `filters ${list}`;

function keptOf(list: string): Kept {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(list)) ?? '{}');
    const entries = kept === null || typeof kept !== 'object' ? [] : Object.entries(kept);
    return Object.fromEntries(entries.filter((each): each is [string, string] => typeof each[1] === 'string'));
  } catch {
    return {};
  }
}

/** What a list shows, kept by name on this device. */
export function SavedFilters({ list, search, show }: { list: string; search: string; show: (search: string) => void }) {
  const [kept, setKept] = useState(() => keptOf(list));
  const [name, setName] = useState('');
  const keep = (next: Kept) => {
    localStorage.setItem(keyOf(list), JSON.stringify(next));
    setKept(next);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === '') return;
    keep({ ...kept, [name.trim()]: search });
    setName('');
  };
  const names = Object.keys(kept).sort();
  const chosen = names.find((each) => kept[each] === search);
  return (
    <details className="saved">
      <summary>Saved filters{chosen ? `: ${chosen}` : names.length > 0 ? ` (${names.length})` : ''}</summary>
      {names.length > 0 && (
        <ul className="plain">
          {names.map((each) => (
            <li key={each} className="row">
              <button type="button" className="plain" aria-pressed={each === chosen} onClick={() => show(kept[each] ?? '')}>
                {each}
              </button>
              <button
                type="button"
                className="plain"
                aria-label={`Forget the filter ${each}`}
                onClick={() => keep(Object.fromEntries(Object.entries(kept).filter(([other]) => other !== each)))}
              >
                Forget
              </button>
            </li>
          ))}
        </ul>
      )}
      <form className="row" onSubmit={submit}>
        <label>
          Name for what is shown now
          <input value={name} maxLength={60} onChange={(event) => setName(event.target.value)} />
        </label>
        <button type="submit" disabled={name.trim() === ''}>
          Save the filter
        </button>
      </form>
      <p className="quiet">Kept on this device.</p>
    </details>
  );
}
