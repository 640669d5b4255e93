/** Asks for the next page of a list; nothing where there is none. */
export function More({
  of,
}: {
  of: { readonly hasNextPage: boolean; readonly isFetchingNextPage: boolean; readonly fetchNextPage: () => Promise<unknown> };
}) {
  if (!of.hasNextPage) return null;
  return (
    <button type="button" className="plain" disabled={of.isFetchingNextPage} onClick={() => void of.fetchNextPage()}>
      {of.isFetchingNextPage ? 'Reading ...' : 'Show more'}
    </button>
  );
}
