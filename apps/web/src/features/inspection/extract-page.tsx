import { useQuery } from '@tanstack/react-query';
import { Link, useSearchParams } from 'react-router';
import { extractSheet } from '#drawings';
import { itemKinds } from '#tour-file';
import { today } from '../../platform/today.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded, Page } from '../../ui/page.js';
import { inspectedItems } from './operations.js';
import { usePrint } from '../../ui/use-print.js';

function useExtract() {
  const [search] = useSearchParams();
  const kinds = search.getAll('kind');
  const depots = search.getAll('depot').filter((each) => each !== '');
  const query = useQuery({ queryKey: ['extract', ...kinds, '·', ...depots], queryFn: () => inspectedItems({ kinds, depots }) });
  const of = `${kinds.length > 0 ? kinds.join(', ') : 'all kinds'}, ${depots.length > 0 ? depots.join(', ') : 'all depots'}`;
  return { query, of, search };
}

/** The register for an inspector: kinds and places are chosen, then it is printed or taken as CSV. */
export function ExtractScreen() {
  const { query, of, search } = useExtract();
  const asked = search.toString();
  return (
    <Page
      title="Extract of the register"
      lede="For an inspector: every item of the kinds and places chosen, with its dates and its last report."
      actions={
        <>
          <Link to="/register">Back to the register</Link>
          <Link to={`/print/extract?${asked}`} target="_blank">
            Print it
          </Link>
          <a href={`/api/csv/extract?${asked}`}>As CSV</a>
        </>
      }
    >
      <form method="get">
        <fieldset>
          <legend>Kinds (none: all)</legend>
          <div className="row">
            {itemKinds.map((each) => (
              <label key={each} className="row">
                <input type="checkbox" className="tick" name="kind" value={each} defaultChecked={search.getAll('kind').includes(each)} />
                {each}
              </label>
            ))}
          </div>
        </fieldset>
        <div className="fields">
          <label>
            Depot (empty: all)
            <input name="depot" defaultValue={search.get('depot') ?? ''} />
          </label>
        </div>
        <button type="submit">Show it</button>
      </form>
      <Loaded query={query}>{(items) => <Drawing of={extractSheet(items, of, today())} wide />}</Loaded>
    </Page>
  );
}

export function ExtractPrint() {
  const { query, of } = useExtract();
  usePrint(query.data !== undefined, 'Extract of the register');
  return <Loaded query={query}>{(items) => <Drawing of={extractSheet(items, of, today())} />}</Loaded>;
}
