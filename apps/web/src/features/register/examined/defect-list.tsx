import type { TypedDefect } from './examination-fields.js';

type Column = readonly [key: Exclude<keyof TypedDefect, 'id'>, label: string, type?: 'date'];

const columns: readonly Column[] = [
  ['part', 'Part'],
  ['what', 'Defect'],
  ['dangerousBy', 'Could become a danger by (empty: a danger now)', 'date'],
  ['repair', 'Repair, renewal or alteration needed'],
  ['remediedOn', 'Put right on', 'date'],
];

const noDefect = { part: '', what: '', dangerousBy: '', repair: '', remediedOn: '' };

/** Parts with a defect, one by one; null: nothing is said of them yet. */
export function DefectList({
  defects,
  onChange,
}: {
  defects: readonly TypedDefect[] | null;
  onChange: (defects: readonly TypedDefect[] | null) => void;
}) {
  const list = defects ?? [];
  const put = (id: string, key: string, value: string) => onChange(list.map((each) => (each.id === id ? { ...each, [key]: value } : each)));
  return (
    <fieldset>
      <legend>Parts with a defect that is or could become a danger</legend>
      {list.map((each, index) => (
        <div key={each.id} className="fields">
          {columns.map(([key, label, type]) => (
            <label key={key}>
              {label}
              <input
                type={type ?? 'text'}
                value={each[key]}
                aria-label={`Defect ${index + 1}: ${label}`}
                onChange={(event) => put(each.id, key, event.target.value)}
              />
            </label>
          ))}
          <button
            type="button"
            className="plain small"
            onClick={() => onChange(list.length === 1 ? null : list.filter((one) => one.id !== each.id))}
          >
            Take defect {index + 1} out
          </button>
        </div>
      ))}
      {list.length === 0 && (
        <label className="row">
          <input
            type="checkbox"
            className="tick"
            checked={defects !== null}
            onChange={(event) => onChange(event.target.checked ? [] : null)}
          />
          The report names none
        </label>
      )}
      <button type="button" className="plain" onClick={() => onChange([...list, { id: crypto.randomUUID(), ...noDefect }])}>
        Add a defect
      </button>
    </fieldset>
  );
}

export const typedDefects = (
  defects: readonly (Partial<Omit<TypedDefect, 'id'>> & Pick<TypedDefect, 'part' | 'what'>)[] | undefined,
): readonly TypedDefect[] | null => defects?.map((each, index) => ({ id: `${index}`, ...noDefect, ...each })) ?? null;
