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
