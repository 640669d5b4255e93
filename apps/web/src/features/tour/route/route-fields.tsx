import { type DayOrder, designsOfRoute, routeColumns } from '#tour-file';
import { Columns, columnsSaid } from '../../sheet/columns.js';
import { SheetFaults, grouped } from '../../sheet/sheet-faults.js';
import { type RouteGiven, rowsOf, type useRouteSheet } from './use-route-sheet.js';
import { scrollsWide } from '../../../ui/scrolls.js';

/** A route sheet: the file or the pasted rows, how they are read, and the shows that they are. */
export function RouteFields({ of }: { of: ReturnType<typeof useRouteSheet> }) {
  const { route, why, order } = of;
  return (
    <fieldset>
      <legend>Route sheet</legend>
      <p className="quiet">
        One row a show: date, venue, and where there are any city, time zone, design, last day. A heading above each column. What is called
        a design here is hung once and flown at every show that names it.
      </p>
      <div className="fields">
        <label>
          File (CSV or .xlsx)
          <input type="file" accept=".csv,.tsv,.txt,.xlsx" onChange={(event) => void of.takeFile(event.target.files?.[0])} />
        </label>
        <label>
          or rows copied from a spreadsheet
          <textarea
            rows={3}
            placeholder={'date\tvenue\tcity\ttime zone\tdesign'}
            onChange={(event) => void of.takeText(event.target.value)}
          />
        </label>
      </div>
      {why && <p role="alert">■ {why}</p>}
      {route && (
        <>
          <details open={route.read.faults.length > 0}>
            <summary>{columnsSaid(route.raw.records[route.headingAt] ?? [], route.match)}</summary>
            <Columns
              records={route.raw.records}
              headingAt={route.headingAt}
              match={route.match}
              columns={routeColumns}
              onMatch={of.setMatch}
            />
          </details>
          {route.read.needsOrder && <OrderChoice order={order} onChoose={of.setOrder} />}
          {route.read.faults.length > 0 && (
            <SheetFaults faults={grouped(route.read.faults)} raw={route.raw} headingAt={route.headingAt} sheet={route.sheet} />
          )}
          <ShowsRead route={route} />
        </>
      )}
    </fieldset>
  );
}

const OrderChoice = ({ order, onChoose }: { order: DayOrder | undefined; onChoose: (order: DayOrder | undefined) => void }) => (
  <label>
    ■ Days such as 04/03/2027 can be read two ways. What comes first in this sheet?
    <select value={order ?? ''} onChange={(event) => onChoose((event.target.value || undefined) as DayOrder | undefined)}>
      <option value="">choose one</option>
      <option value="day first">the day: 04/03/2027 is 4 March</option>
      <option value="month first">the month: 04/03/2027 is 3 April</option>
    </select>
  </label>
);

function ShowsRead({ route }: { route: RouteGiven }) {
  const rows = rowsOf(route);
  if (rows.length === 0) return null;
  const designs = designsOfRoute(rows);
  return (
    <>
      <p role="status">
        {rows.length} {rows.length === 1 ? 'show' : 'shows'}
        {designs.length > 0 &&
          `, ${designs.length} ${designs.length === 1 ? 'design' : 'designs'}: ${designs.map((each) => each.name).join(', ')}`}
      </p>
      <div {...scrollsWide}>
        <table className="tight">
          <thead>
            <tr>
              <th scope="col">Days</th>
              <th scope="col">Show</th>
              <th scope="col">Venue</th>
              <th scope="col">Time zone</th>
              <th scope="col">Design</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((each) => (
              <tr key={each.row}>
                <td>{each.from === each.to ? each.from : `${each.from} to ${each.to}`}</td>
                <td>{each.name}</td>
                <td>{each.venue}</td>
                <td>{each.timeZone}</td>
                <td>{each.design || 'none'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
