import { useQuery } from '@tanstack/react-query';
import { dueListSheet } from '#drawings';
import { today } from '../../platform/today.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded } from '../../ui/page.js';
import { usePrint } from '../../ui/use-print.js';
import { type DatesAsked, type DatesLine, datesPage, useDatesAsked, useDatesChoices } from './dates-asked.js';

async function allLines(asked: DatesAsked): Promise<DatesLine[]> {
  const found: DatesLine[] = [];
  for (let after: string | null = null, more = true; more; ) {
    const page: Awaited<ReturnType<typeof datesPage>> = await datesPage(asked, 200, after);
    found.push(...page.edges.map(({ node }) => node));
    after = page.pageInfo.endCursor ?? null;
    more = page.pageInfo.hasNextPage;
  }
  return found;
}

/** The due list on paper, whole, as chosen in the address. */
export function DatesPrint() {
  const { asked } = useDatesAsked();
  const choices = useDatesChoices();
  const query = useQuery({
    queryKey: ['dates print', asked.depot, asked.tour, asked.kind, asked.days],
    queryFn: () => allLines(asked),
  });
  const tour = choices.data?.tours.edges.find(({ node }) => node.id === asked.tour)?.node.name ?? asked.tour;
  usePrint(query.data !== undefined && choices.data !== undefined, 'Due list');
  return (
    <Loaded query={choices}>
      {() => <Loaded query={query}>{(items) => <Drawing of={dueListSheet(items, { ...asked, tour }, today())} />}</Loaded>}
    </Loaded>
  );
}
