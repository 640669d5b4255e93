import { Link } from 'react-router';

interface Named {
  readonly itemId?: string | null | undefined;
  readonly tourId?: string | null | undefined;
  readonly tourName?: string | null | undefined;
  readonly showId?: string | null | undefined;
}

/** What a line concerns, each with the way to it. */
export function About({ line: { itemId, tourId, tourName, showId } }: { line: Named }) {
  if (!itemId && !tourId) return null;
  return (
    <span>
      {itemId && (
        <Link className="mono" to={`/register/${encodeURIComponent(itemId)}`}>
          {itemId}
        </Link>
      )}
      {itemId && tourId && ', '}
      {tourId && (
        <Link to={`/tours/${encodeURIComponent(tourId)}${showId ? `/shows/${encodeURIComponent(showId)}` : ''}`}>
          {tourName ?? tourId}
          {showId && `, ${showId}`}
        </Link>
      )}
    </span>
  );
}
