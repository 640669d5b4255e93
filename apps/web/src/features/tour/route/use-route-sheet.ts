import { useMemo, useState } from 'react';
import {
  type DayOrder,
  type Match,
  type MatchedSheet,
  type RouteSheet,
  headingRowOf,
  matchColumns,
  matchedSheet,
  readRouteSheet,
  routeColumns,
} from '#tour-file';
import { type NotRead, type RawSheet, readPasted, readSheets } from '../../sheet/read-sheets.js';

interface Given {
  readonly raw: RawSheet;
  readonly headingAt: number;
  readonly match: Match;
}

export interface RouteGiven extends Given {
  readonly sheet: MatchedSheet;
  readonly read: RouteSheet;
}

const given = (raw: RawSheet): Given => {
  const headingAt = headingRowOf(raw.records, routeColumns);
  return { raw, headingAt, match: matchColumns(raw.records[headingAt] ?? [], routeColumns) };
};

/** A route sheet from a file or pasted, its columns as they are matched, and what it says. `zone`: of shows that name none. */
export function useRouteSheet(zone: string) {
  const [of, setOf] = useState<Given | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const [order, setOrder] = useState<DayOrder | undefined>(undefined);
  const take = (read: RawSheet | NotRead | undefined): void => {
    setWhy(read === undefined ? 'There is nothing in it.' : 'why' in read ? read.why : null);
    setOf(read && 'records' in read ? given(read) : null);
  };
  const route = useMemo((): RouteGiven | null => {
    if (!of) return null;
    const sheet = matchedSheet(of.raw.records, of.headingAt, of.match);
    return { ...of, sheet, read: readRouteSheet(sheet.records, { zone, order }) };
  }, [of, zone, order]);
  return {
    route,
    why,
    order,
    setOrder,
    setMatch: (match: Match): void => setOf((now) => now && { ...now, match }),
    takeFile: async (file: File | undefined): Promise<void> => take(file ? (await readSheets(file))[0] : undefined),
    takeText: async (text: string): Promise<void> => {
      try {
        take(text.trim() === '' ? undefined : await readPasted('what was pasted', text));
      } catch (fault) {
        take({ name: 'what was pasted', why: (fault as Error).message.slice(0, 200) });
      }
    },
    clear: (): void => setOf(null),
  };
}

/** The shows of the sheet, where nothing in it is wrong and nothing is open. */
export const rowsOf = (route: RouteGiven | null): RouteSheet['rows'] =>
  route && route.read.faults.length === 0 && !route.read.needsOrder ? route.read.rows : [];
