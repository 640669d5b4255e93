/** The order that the address holds: `model`, or `-model` for the other way. */
export interface Order {
  readonly by: string;
  readonly isDescending: boolean;
}

export const orderOf = (sort: string): Order =>
  sort.startsWith('-') ? { by: sort.slice(1), isDescending: true } : { by: sort, isDescending: false };

/** A heading that sorts: pressed once upwards, pressed again the other way. */
export function SortHead({ by, title, sort, put }: { by: string; title: string; sort: string; put: (sort: string) => void }) {
  const order = orderOf(sort);
  const isBy = order.by === by;
  return (
    <th aria-sort={isBy ? (order.isDescending ? 'descending' : 'ascending') : undefined}>
      <button type="button" className="sort" onClick={() => put(isBy && !order.isDescending ? `-${by}` : by)}>
        {title} <span aria-hidden="true">{isBy ? (order.isDescending ? '▼' : '▲') : '↕'}</span>
      </button>
    </th>
  );
}

/** A whole list in the order of the address; numbers in serials count as numbers. */
function inOrder<Row>(rows: readonly Row[], sort: string, keys: Readonly<Record<string, (row: Row) => string>>): readonly Row[] {
  const { by, isDescending } = orderOf(sort);
  const key = keys[by];
  if (!key) return rows;
  const compare = new Intl.Collator('en', { numeric: true }).compare;
  return [...rows].sort((a, b) => (isDescending ? -1 : 1) * compare(key(a), key(b)));
}
