interface Row {
  readonly table: string;
  readonly key?: string | null;
  readonly before?: unknown;
  readonly after?: unknown;
}

/** What an act changed, field by field, as it was and as it is. */
export function ChangedRows({ rows, more }: { rows: readonly Row[]; more: number }) {
  if (rows.length === 0) return null;
  const count = rows.length + more;
  return (
    <details>
      <summary>
        {count} {count === 1 ? 'row' : 'rows'} changed
      </summary>
      {rows.map((row, index) => (
        <div key={`${row.table} ${row.key} ${index}`}>
          <p>
            {wordsOf(row.table)} <span className="mono">{row.key}</span>
            {row.before === null && ', new'}
            {row.after === null && ', removed'}
          </p>
          <dl className="pairs">
            {fieldsOf(row.before, row.after).map(({ field, was, is }) => (
              <div key={field}>
                <dt>{wordsOf(field)}</dt>
                <dd style={{ overflowWrap: 'anywhere' }}>
                  {row.before !== null && <del>{was ?? 'nothing'}</del>} {row.after !== null && <span>{is ?? 'nothing'}</span>}
                </dd>
              </div>
            ))}
          </dl>
        </div>
      ))}
      {more > 0 && <p className="quiet">and {more} more rows.</p>}
    </details>
  );
}

const wordsOf = (name: string): string =>
  name.replaceAll('_', ' ').replaceAll(/([a-z])([A-Z])/g, (_, one: string, two: string) => `${one} ${two.toLowerCase()}`);

interface Changed {
  readonly field: string;
  readonly was: string | undefined;
  readonly is: string | undefined;
}

/** Fields with their way down, in the order of their names. */
function fieldsOf(before: unknown, after: unknown): Changed[] {
  const [was, is] = [leavesOf(before), leavesOf(after)];
  const names = [...new Set([...was.keys(), ...is.keys()])].sort();
  return names.map((field) => ({ field, was: was.get(field), is: is.get(field) }));
}

function leavesOf(value: unknown, at = '', found = new Map<string, string>()): Map<string, string> {
  if (value === null || value === undefined) return found;
  if (typeof value !== 'object' || Array.isArray(value)) return found.set(at, typeof value === 'string' ? value : JSON.stringify(value));
  for (const [field, each] of Object.entries(value)) leavesOf(each, at === '' ? field : `${at}, ${field}`, found);
  return found;
}
